import { detectorOnMeter, heaterOnMeter } from '../../../engine/faults/detector-on-meter.ts';
import { OVERLOAD } from '../../../engine/faults/ohmmeter.ts';
import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { DetectorDescription } from '../../../engine/kinds/detectors/detector-schema.ts';
import type { Reception } from '../../../engine/reception/path/types.ts';
import { benchCautions } from '../../../engine/set/cautions.ts';
import type { SetDescription } from '../../../engine/set/description.ts';
import {
  blockDrilled,
  crystalDetector,
  crystalInCup,
  heaterLeads,
  holderFromBelow,
  leadsBent,
  pliersOnLead,
  whiskerWound,
} from '../../drawings/making/index.ts';
import {
  type Contact,
  cautionTexts,
  detectorChecks as checks,
  detectorMaking as making,
  detectorSheetWords as texts,
} from '../../words/index.ts';
import { CRYSTAL_BLOCK, DIODE_PINS } from '../board/footprints.ts';
import { fewestPages } from '../paper/fewest-pages.ts';
import { Flow, type StepGroup } from '../paper/flow.ts';
import { PAGE_SMALL, type PaperName, type Sheet } from '../paper/page.ts';
import { heardBest } from './best.ts';
import { contactOf } from './detector-steps.ts';
import { metered } from './meter.ts';
import type { SetOnBand, SetOnBands } from './set-on-band.ts';

type Of<K extends DetectorDescription['kind']> = Extract<DetectorDescription, { kind: K }>;
type Row = readonly string[];

/** What is told of a kind of detector. */
interface Making {
  readonly heading: keyof typeof texts.headings.steps;
  readonly materials: readonly Row[];
  readonly steps: readonly StepGroup[];
  /** By itself, before it is wired. */
  readonly alone: readonly Row[];
}

/** A lead is bent so far from the body or more, m. Common practice, no source. */
const BEND = 0.005;

function crystal(detector: Of<'galena' | 'mineral'>): Making {
  const contact = contactOf(detector) as Contact;
  const isPair = contact === 'pair of crystals';
  const { forward, reverse } = detectorOnMeter(detector);
  const reading = { forward, reverse, overload: OVERLOAD, contact };
  return {
    heading: 'make',
    materials: making.crystalMaterials({
      block: CRYSTAL_BLOCK,
      crystal: detector.kind === 'galena' ? 'galena' : detector.mineral,
      contact,
    }),
    steps: [
      { lines: making.block(CRYSTAL_BLOCK), picture: blockDrilled(CRYSTAL_BLOCK) },
      { lines: making.cup, picture: crystalInCup() },
      isPair ? { lines: making.pair } : { lines: making.whisker, picture: whiskerWound() },
      { lines: making.set[contact], picture: crystalDetector(isPair) },
    ],
    alone: [checks.crystalForward(reading), checks.crystalReverse(reading), checks.crystalApart(OVERLOAD)],
  };
}

function diode(detector: DetectorDescription): Making {
  const { forward, reverse, drop } = detectorOnMeter(detector);
  return {
    heading: 'fit',
    materials: making.diodeMaterials(DIODE_PINS),
    steps: [
      { lines: making.bend(BEND), picture: leadsBent(DIODE_PINS, BEND) },
      { lines: making.solder, picture: pliersOnLead() },
    ],
    alone: [...(drop ? [checks.drop(drop)] : []), checks.diodeReverse({ forward, reverse, overload: OVERLOAD })],
  };
}

function valve({ heaterVoltage: voltage, ratedHeaterVoltage: rated }: Of<'valve'>): Making {
  const { cold, current } = heaterOnMeter(Math.max(voltage, 0.1), rated);
  return {
    heading: 'fit',
    materials: making.valveMaterials({ voltage, current }),
    steps: [
      { lines: making.holder, picture: holderFromBelow() },
      { lines: making.heater, picture: heaterLeads() },
      { lines: making.plug },
    ],
    alone: [
      checks.heaterVoltage(voltage),
      checks.heaterCold(cold),
      checks.heaterApart(OVERLOAD),
      checks.heaterHot({ voltage, current }),
    ],
  };
}

const MAKING: ByKind<DetectorDescription, Making> = {
  galena: crystal,
  mineral: crystal,
  germanium: diode,
  schottky: diode,
  silicon: diode,
  exponential: diode,
  measured: diode,
  valve,
};

/** In the finished set: what is heard, and what stands without a station. */
function inSet({ set, reception, readings, band }: SetOnBand): Row[] {
  const load = set.load.kind;
  const rows: Row[] = [];
  const standing = readings.standingVoltage();
  if (set.detector.kind === 'valve' && metered(standing)) rows.push(checks.standing({ voltage: standing, load }));
  const best = heardBest(reception);
  if (best) {
    const voltage = readings.directVoltage(best.index);
    rows.push(
      checks.onStation({
        band,
        station: best.name,
        frequency: best.frequency,
        voltage: metered(voltage) ? voltage : undefined,
        load,
        contact: contactOf(set.detector),
      }),
    );
  }
  return rows;
}

/** The same on each band; what stands without a station is said once where it does not change. */
function inSetOnBands(bands: SetOnBands): Row[] {
  const rows = bands.flatMap(inSet);
  return rows.filter((row, i) => rows.findIndex((one) => one.join() === row.join()) === i);
}

/** Of the detector and of soldering it, a sentence each. */
function cautionsOf(set: SetDescription, reception: Reception): string[] {
  const own = reception.cautions.filter(({ about }) => about === 'detector');
  const bench = benchCautions(set).filter(({ code }) => code === 'bench.solder' || code === 'bench.wire-ends');
  const phones = reception.cautions.filter(({ code }) => code === 'load.clicks-on-ears');
  return [...own, ...bench, ...phones].map(({ code }) => cautionTexts[code]);
}

/** How the detector is made or fitted, and what it should read. */
export function detectorSheet(bands: SetOnBands, paper: PaperName): Sheet {
  const [{ set, reception }] = bands;
  const { heading, materials, steps, alone } = byKind(MAKING, set.detector);
  const { columns, headings } = texts;
  const putChecks = (flow: Flow, rows: readonly Row[]): void => {
    flow.table(
      [
        { title: '✓', share: 0.4 },
        { title: columns.check, share: 4 },
        { title: columns.expected, share: 3.4 },
        { title: columns.otherwise, share: 4 },
      ],
      rows.map((row) => ['', ...row]),
    );
  };
  const after = inSetOnBands(bands);
  return fewestPages((layout) => {
    const flow = new Flow({ id: 'detector', title: texts.title, set: set.name, paper, layout });
    flow.heading(headings.cautions);
    flow.list(cautionsOf(set, reception), 'dot', PAGE_SMALL);
    if (set.detector.wiring !== 'single') flow.para(texts.two);
    flow.heading(headings.materials);
    flow.table(
      [
        { title: columns.part, share: 2 },
        { title: columns.number, share: 0.9 },
        { title: columns.size, share: 8 },
      ],
      materials,
    );
    flow.heading(headings.steps[heading], flow.firstStepHeight(steps));
    flow.steps(steps);
    flow.heading(headings.checks, 30);
    putChecks(flow, alone);
    if (after.length > 0) {
      flow.heading(headings.inSet, 30);
      putChecks(flow, after);
    }
    return flow.finish(texts.description);
  });
}
