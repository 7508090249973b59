import type { Element } from '../../network/elements.ts';
import { PART } from '../../network/part-ids.ts';
import type { Assembly } from './assembly.ts';
import { coilInCircuit } from './coil-sections.ts';
import { type ArrangementOf, assembled, coilEnds, earthMiddle, type Kit, tuningPort } from './kit.ts';
import { trapElements } from './traps.ts';

/** A frame or ferrite rod that is aerial and tuning coil at once: the field's emf acts in its own turns. */
export function loopAerial(arrangement: ArrangementOf<'frame' | 'ferrite rod'>, kit: Kit): Assembly {
  const loop = kit.loop;
  if (!loop) throw new RangeError('a frame or rod arrangement needs a frame or rod aerial');
  const { first, middle } = coilEnds(kit, loop.turns);
  const detectorTurn = kit.wiring === 'full-wave' ? loop.turns : (arrangement.detectorTap ?? loop.turns);
  const wound = earthMiddle(
    coilInCircuit(loop, [detectorTurn, ...(middle === undefined ? [] : [middle])], {
      first,
      last: 'top',
    }),
    middle,
  );
  const traps = trapElements(kit.traps, { coil: loop, wound }, 'loop');
  const elements = [
    ...wound.elements.flatMap((e): Element[] => {
      if (e.kind !== 'inductor' || e.owner.turns === undefined) return [e];
      // Every turn has its own share of the emf, in series with it.
      const within = `within ${e.id}`;
      return [{ ...e, to: within }, loop.source(e.to, within, e.owner.turns)];
    }),
    ...traps.elements,
  ];
  return assembled(
    { ...kit, aerial: [] },
    {
      elementsAt: () => elements,
      tuning: [tuningPort(PART.tuning, kit.tuning, { from: 'top', to: first })],
      live: wound.nodeAt(detectorTurn),
      other: first,
      tunedPort: { from: 'top', to: first },
      warnings: traps.warnings,
    },
  );
}
