import { type ByKind, byKind } from '../../../engine/kinds/by-kind.ts';
import type { CoilModel } from '../../../engine/parts/coil/model.ts';
import { CHEEK_THICKNESS, cheekDiameter, endsWhereItStarts } from '../../drawings/coil/cheek.ts';
import type { CoilOf, Tap, WoundDescription } from '../../drawings/coil/drawn.ts';
import { coilSheetWords, coilTemplate } from '../../words/index.ts';
import type { Flow } from '../paper/flow.ts';
import {
  basketTemplate,
  type CoilTemplate,
  cheekTemplates,
  spiderTemplate,
  spiralTemplate,
  stripTemplate,
} from './coil-templates.ts';

type Tube = CoilOf<'solenoid' | 'multilayer' | 'bank-wound'>;

/** Kept free above a template. */
const ABOVE = 4;

function put(flow: Flow, template: CoilTemplate, alt: string): void {
  flow.heading(coilSheetWords.headings.template, flow.templateNeed(template.h, ABOVE));
  flow.template(template.items, template, alt);
}

function strip(flow: Flow, heading: string, coil: Tube, model: CoilModel, taps: readonly Tap[], words: string): void {
  const template = stripTemplate(coil, model, taps);
  const size = { length: model.windingLength };
  flow.heading(heading, flow.templateNeed(template.h + 10, ABOVE));
  flow.para(words, { small: true });
  const { alt } = coilTemplate;
  flow.template(template.items, template, taps.length > 0 ? alt.tappedStrip(size) : alt.strip(size));
}

type TemplateOf<K extends WoundDescription['shape']> = (
  coil: CoilOf<K>,
  flow: Flow,
  model: CoilModel,
  taps: readonly Tap[],
) => void;

const tube: TemplateOf<'solenoid' | 'bank-wound'> = (coil, flow, model, taps) => {
  const words = taps.length > 0 ? coilTemplate.strip.tapped : coilTemplate.strip.plain;
  strip(flow, coilSheetWords.headings.template, coil, model, taps, words);
};

const pile: TemplateOf<'multilayer'> = (coil, flow, model, taps) => {
  const words = endsWhereItStarts(coil) ? coilTemplate.strip.pileEndAtStart : coilTemplate.strip.pile;
  strip(flow, coilSheetWords.headings.templates, coil, model, taps, words);
  const sizes = {
    across: cheekDiameter(coil) / 1e3,
    hole: coil.formerDiameter,
    thickness: CHEEK_THICKNESS / 1e3,
  };
  for (const { which, ...template } of cheekTemplates(coil, taps)) {
    flow.need(flow.templateNeed(template.h + 4, ABOVE));
    flow.para(coilTemplate.cheekSizes[which](sizes), { small: true, bold: true });
    flow.template(template.items, template, coilTemplate.alt.cheek[which](sizes.across));
  }
};

const COIL_TEMPLATE: ByKind<WoundDescription, void, [Flow, CoilModel, readonly Tap[]]> = {
  solenoid: tube,
  'bank-wound': tube,
  multilayer: pile,
  spider: (coil, flow, _, taps) => {
    const template = spiderTemplate(coil, taps);
    put(flow, template, coilTemplate.alt.spider({ slots: coil.slots, across: template.h / 1e3 }));
  },
  basket: (coil, flow) =>
    put(flow, basketTemplate(coil), coilTemplate.alt.basket({ pegs: coil.pegs, circle: coil.pegCircle })),
  spiral: (coil, flow, model, taps) => put(flow, spiralTemplate(coil, model, taps), coilTemplate.alt.spiral),
  // A core is bought: nothing is cut.
  core: () => undefined,
};

/** What is cut or drilled for a coil, at full size. */
export const putTemplate = (flow: Flow, coil: WoundDescription, model: CoilModel, taps: readonly Tap[]): void =>
  byKind(COIL_TEMPLATE, coil, flow, model, taps);
