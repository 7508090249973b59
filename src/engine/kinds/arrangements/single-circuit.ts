import { warning } from '../../facts/warning.ts';
import type { Element } from '../../network/elements.ts';
import { owned } from '../../network/ids.ts';
import { PART } from '../../network/part-ids.ts';
import type { Assembly } from './assembly.ts';
import { coilInCircuit } from './coil-sections.ts';
import { type ArrangementOf, assembled, coilEnds, earthMiddle, type Kit, tuningPort } from './kit.ts';
import { trapElements } from './traps.ts';
import { joinedAtTop, lastNode, usedTurns } from './used-turns.ts';

/**
 * One tuned circuit fed straight from the aerial: to its top, to its top through a capacitor, or to a tap.
 * The three differ only in where the aerial is joined and what lies in its lead.
 */
export function singleCircuit(
  arrangement: ArrangementOf<'direct' | 'series capacitor' | 'tapped'>,
  kit: Kit,
): Assembly {
  const coil = kit.coil(arrangement.coil);
  const turns = usedTurns(arrangement, coil.turns);
  const { used } = turns;
  const { first, middle } = coilEnds(kit, used);
  const aerialTurn = arrangement.kind === 'tapped' ? arrangement.aerialTap : used;
  const detectorTurn = kit.wiring === 'full-wave' ? used : (arrangement.detectorTap ?? used);
  const taps = [used, aerialTurn, detectorTurn, ...(middle === undefined ? [] : [middle])];
  const wound = earthMiddle(joinedAtTop(coilInCircuit(coil, taps, { first, last: lastNode(turns) }), turns), middle);
  const series = arrangement.kind === 'direct' ? undefined : arrangement.seriesCapacitor;
  const target = wound.nodeAt(aerialTurn);
  const traps = trapElements(kit.traps, { coil, wound });
  const lead: Element =
    series === undefined
      ? { kind: 'resistor', ...owned(PART.aerial, 'contact'), from: traps.feed, to: target, resistance: 0.01 }
      : {
          kind: 'capacitor',
          ...owned(PART.seriesCapacitor, 'part'),
          from: traps.feed,
          to: target,
          capacitance: series,
        };
  const elements = [...wound.elements, ...traps.elements, lead];
  const warnings = [...traps.warnings];
  if (middle !== undefined && (arrangement.kind === 'tapped' || (arrangement.detectorTap ?? used) !== used)) {
    warnings.push(warning('arrangement.full-wave-tap-unused'));
  }
  return assembled(kit, {
    elementsAt: () => elements,
    tuning: [tuningPort(PART.tuning, kit.tuning, { from: 'top', to: first })],
    live: wound.nodeAt(detectorTurn),
    other: first,
    tunedPort: { from: 'top', to: first },
    warnings,
  });
}
