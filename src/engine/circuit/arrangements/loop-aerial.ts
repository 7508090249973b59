import type { Assembly } from '../assembly.ts';
import { coilInCircuit } from './coil-sections.ts';
import { type ArrangementOf, assembled, coilEnds, earthMiddle, type Kit, tuningPort } from './kit.ts';

/** A frame or ferrite rod that is aerial and tuning coil at once: the field's emf acts in its own turns. */
export function loopAerial(arrangement: ArrangementOf<'frame' | 'ferrite rod'>, kit: Kit): Assembly {
  const loop = kit.loop;
  if (!loop) throw new RangeError('a frame or rod arrangement needs a frame or rod aerial');
  const { first, middle } = coilEnds(kit, loop);
  const detectorTurn = kit.wiring === 'full-wave' ? loop.turns : (arrangement.detectorTap ?? loop.turns);
  const wound = coilInCircuit(loop, [detectorTurn, ...(middle === undefined ? [] : [middle])], {
    first: 'foot',
    last: 'top',
    part: loop.part,
  });
  // The emf of all turns enters at the foot; what the taps see of it is their share through the coupling of the turns.
  const elements = [...earthMiddle(wound, middle), loop.source(first, 'foot')];
  return assembled(
    { ...kit, aerial: [] },
    {
      elementsAt: () => elements,
      tuning: [tuningPort('tuning capacitor', kit.tuning, { from: 'top', to: first }, 'tuning')],
      live: wound.nodeAt(detectorTurn),
      other: first,
      tunedPort: { from: 'top', to: first },
      tunedCoils: wound.sections.map((s) => s.name),
    },
  );
}
