// Which files must learn of a new arrangement, coil, detector, load, objective or sheet: writes the lists in CONTRIBUTING.md.
import { filesToExtend, writeContributing } from './support/toy-kind.mjs';

writeContributing(await filesToExtend());
