import type { Ohms, Volts } from '../../../engine/units/quantities.ts';

/** An ordinary meter's last figure stands for about this much; less does not move it. Common practice, no source. */
const LEAST_VOLTS: Volts = 1e-3;
/** Below this the meter's own leads and plugs are a good part of what it shows. Common practice, no source. */
const LEADS_MATTER: Ohms = 2;

/** Whether an ordinary meter would show it. */
export const metered = (v: Volts): boolean => Math.abs(v) > LEAST_VOLTS;

/** Whether a winding has so little that the meter's leads matter. */
export const leadsMatter = (r: Ohms): boolean => r < LEADS_MATTER;
