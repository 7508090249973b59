import { warning } from '../../facts/warning.ts';
import { EARTH, type Element } from '../../network/elements.ts';
import { owned } from '../../network/ids.ts';
import { PART } from '../../network/part-ids.ts';
import type { Assembly } from './assembly.ts';
import { coilInCircuit, coupleCoils } from './coil-sections.ts';
import { type ArrangementOf, assembled, coilEnds, earthMiddle, type Kit, tuningPort } from './kit.ts';
import { trapElements } from './traps.ts';

/** An aerial winding, tuned or not, coupled to a tuned secondary by where the two stand. */
export function coupledCircuits(arrangement: ArrangementOf<'coupled' | 'two circuits'>, kit: Kit): Assembly {
  const primary = kit.coil(arrangement.aerialCoil);
  const coil = kit.coil(arrangement.coil);
  const { first, middle } = coilEnds(kit, coil.turns);
  const detectorTurn = kit.wiring === 'full-wave' ? coil.turns : (arrangement.detectorTap ?? coil.turns);
  const aerialTurn = arrangement.kind === 'two circuits' ? (arrangement.aerialTap ?? primary.turns) : primary.turns;
  const winding = coilInCircuit(primary, [aerialTurn], {
    first: EARTH,
    last: 'aerial coil',
    prefix: 'aerial ',
  });
  const wound = earthMiddle(
    coilInCircuit(coil, [detectorTurn, ...(middle === undefined ? [] : [middle])], {
      first,
      last: 'top',
    }),
    middle,
  );
  const mutuals = coupleCoils(winding, wound, kit.mutual(arrangement.aerialCoil, arrangement.coil, arrangement));
  const traps = trapElements(kit.traps, { coil, wound });
  const target = winding.nodeAt(aerialTurn);
  const lead: Element =
    arrangement.seriesCapacitor === undefined
      ? { kind: 'resistor', ...owned(PART.aerial, 'contact'), from: traps.feed, to: target, resistance: 0.01 }
      : {
          kind: 'capacitor',
          ...owned(PART.seriesCapacitor, 'part'),
          from: traps.feed,
          to: target,
          capacitance: arrangement.seriesCapacitor,
        };
  const elements = [...winding.elements, ...wound.elements, ...mutuals, ...traps.elements, lead];
  const tuning = [tuningPort(PART.tuning, kit.tuning, { from: 'top', to: first })];
  if (arrangement.kind === 'two circuits') {
    tuning.push(tuningPort(PART.aerialTuning, kit.aerialTuning ?? kit.tuning, { from: 'aerial coil', to: EARTH }));
  }
  return assembled(kit, {
    elementsAt: () => elements,
    tuning,
    ganged: arrangement.kind === 'two circuits' && arrangement.ganged,
    live: wound.nodeAt(detectorTurn),
    other: first,
    tunedPort: { from: 'top', to: first },
    warnings: [
      ...traps.warnings,
      ...(mutuals.every((m) => m.mutual === 0) ? [warning('arrangement.coupling-unknown')] : []),
    ],
  });
}
