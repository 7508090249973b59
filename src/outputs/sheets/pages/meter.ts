import type { Volts } from '../../../engine/units/quantities.ts';

/** An ordinary meter's last figure stands for about this much; less does not move it. Common practice, no source. */
const LEAST_VOLTS: Volts = 1e-3;

/** Whether an ordinary meter would show it. */
export const metered = (v: Volts): boolean => Math.abs(v) > LEAST_VOLTS;
