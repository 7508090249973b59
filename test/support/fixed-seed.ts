import fc from 'fast-check';

/** Properties try the same cases every time, so that a run says something of the change and not of luck; SEED tries others. */
fc.configureGlobal({ seed: process.env.SEED ? Number(process.env.SEED) : 1 });
