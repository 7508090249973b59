import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Circuit, Element } from '../src/engine/network/elements.ts';
import { owned, partId } from '../src/engine/network/ids.ts';
import { createTransient, type Transient } from '../src/engine/solvers/transient/transient.ts';
import type { Measurement } from './bench.ts';

/** The receiver of reference/detector-transient.json (MW, load B), its two series capacitors as one. */
const C_SERIES = (200e-12 * 47e-12) / 247e-12;
const TUNED = { C: 7.708238845373244e-11, L: 220e-6, Rp: 207345.11513692635 };
const STATIONS = [
  { frequency: 1e6, emf: 0.1, modulation: [{ frequency: 1000, depth: 0.3 }] },
  { frequency: 1.009e6, emf: 0.1, modulation: [{ frequency: 400, depth: 0.3 }] },
];
const SATURATION = 0.5e-6;
const N_VT = 1.1 * 0.025851999786435535;
const PER_CYCLE = 32;

export function benchReceiver(): Circuit {
  const part = (kind: string, name: string, from: string, to: string, values: object) =>
    ({ kind, ...owned(partId(name), 'part'), from, to, ...values }) as Element;
  return {
    elements: [
      part('source', 'field', 'earth', 'sky', { emf: { re: 1, im: 0 } }),
      part('resistor', 'aerial resistance', 'sky', 'wire', { resistance: 25 }),
      part('capacitor', 'aerial', 'wire', 'top', { capacitance: C_SERIES }),
      part('inductor', 'coil', 'top', 'earth', { inductance: TUNED.L, resistance: 0 }),
      part('capacitor', 'tuning', 'top', 'earth', { capacitance: TUNED.C }),
      part('resistor', 'loss', 'top', 'earth', { resistance: TUNED.Rp }),
      part('detector', 'detector', 'top', 'out', {}),
      part('resistor', 'load', 'out', 'earth', { resistance: 47e3 }),
      part('capacitor', 'by-pass', 'out', 'earth', { capacitance: 470e-12 }),
    ],
  };
}

/** The same receiver and the same answers per cycle as rfstep.c's: mean output, v², v·i. */
export function benchTransient(stations: number): Transient {
  return createTransient(benchReceiver(), {
    devices: [{ saturationCurrent: SATURATION, ideality: 1.1 }],
    stations: STATIONS.slice(0, stations),
    stepsPerCycle: PER_CYCLE,
    probes: [
      { kind: 'voltage', node: 'out' },
      { kind: 'square', node: 'top' },
      { kind: 'power', node: 'top' },
    ],
    every: PER_CYCLE,
    average: true,
  });
}

/** A program around rfstep.c that runs the same receiver and prints nanoseconds a step. */
function driver(source: string, stations: number): string {
  const list = STATIONS.slice(0, stations);
  const w = list.map((s) => 2 * Math.PI * s.frequency);
  const numbers = (values: number[]) => `{${values.map((v) => v.toExponential(17)).join(',')}}`;
  return `#define _POSIX_C_SOURCE 199309L
#include <stdio.h>
#include <stdlib.h>
#include <time.h>
#define PI 3.14159265358979323846
#include ${JSON.stringify(source)}
static double A[16]=${numbers([
    ...[-1 / (25 * C_SERIES), -1 / (25 * C_SERIES), 0, 0],
    ...[-1 / (25 * TUNED.C), -1 / (25 * TUNED.C) - 1 / (TUNED.Rp * TUNED.C), -1 / TUNED.C, 0],
    ...[0, 1 / TUNED.L, 0, 0],
    ...[0, 0, 0, -1 / (47e3 * 470e-12)],
  ])}, B[4]=${numbers([1 / (25 * C_SERIES), 1 / (25 * TUNED.C), 0, 0])},
 b[4]=${numbers([0, -1 / TUNED.C, 0, 1 / 470e-12])}, c[4]={0,1,0,-1};
int main(int n,char**a){ double w0=${w[0].toExponential(17)},h=2*PI/w0/${PER_CYCLE},hp=2/w0*tan(w0*h/2)/2;
 double S[16],M[16],N[4],g[4],T[4][8]; /* (I - hp A)^-1 */
 for(int i=0;i<4;i++)for(int j=0;j<4;j++){T[i][j]=(i==j)-hp*A[4*i+j];T[i][4+j]=i==j;}
 for(int k=0;k<4;k++){int p=k;for(int i=k;i<4;i++)if(fabs(T[i][k])>fabs(T[p][k]))p=i;
  for(int j=0;j<8;j++){double t=T[k][j];T[k][j]=T[p][j];T[p][j]=t;} double d=T[k][k];for(int j=0;j<8;j++)T[k][j]/=d;
  for(int i=0;i<4;i++)if(i!=k){double f=T[i][k];for(int j=0;j<8;j++)T[i][j]-=f*T[k][j];}}
 for(int i=0;i<4;i++){N[i]=g[i]=0;for(int j=0;j<4;j++){S[4*i+j]=T[i][4+j];N[i]+=T[i][4+j]*B[j]*hp;g[i]+=T[i][4+j]*b[j]*hp;}}
 for(int i=0;i<4;i++)for(int j=0;j<4;j++){M[4*i+j]=S[4*i+j];for(int k=0;k<4;k++)M[4*i+j]+=hp*S[4*i+k]*A[4*k+j];}
 double E[]=${numbers(list.map((s) => s.emf))},m[]=${numbers(list.map((s) => s.modulation[0].depth))},wc[]=${numbers(w)},
  wm[]=${numbers(list.map((s) => 2 * Math.PI * s.modulation[0].frequency))},x[4]={0},i0=0; long cycles=atol(a[1]);
 double*out=malloc(sizeof(double)*8*cycles); struct timespec p,q; clock_gettime(CLOCK_MONOTONIC,&p);
 rf_run(4,M,N,N,g,g,c,${SATURATION.toExponential(17)},${N_VT.toExponential(17)},1e-6,${stations},E,m,wc,wm,h,0,x,&i0,cycles,${PER_CYCLE},1,3,w0,out,0,0,0);
 clock_gettime(CLOCK_MONOTONIC,&q);
 printf("%.4f %.9g\\n",((q.tv_sec-p.tv_sec)*1e9+(q.tv_nsec-p.tv_nsec))/(cycles*${PER_CYCLE}.0),out[8*(cycles-1)]); return 0; }
`;
}

const compiler = spawnSync('cc', ['--version'], { stdio: 'ignore' }).status === 0;

/**
 * Time per step over that of the reference program at -O2, both run in turn on this machine: the median of seven.
 * @throws Error when the two do not give the same voltage.
 */
export function transientAgainstC(stations: number): number {
  const folder = mkdtempSync(join(tmpdir(), 'faintwave-bench-'));
  try {
    writeFileSync(join(folder, 'driver.c'), driver(resolve('reference/generators/rfstep.c'), stations));
    const program = join(folder, 'driver');
    const built = spawnSync('cc', ['-O2', '-o', program, join(folder, 'driver.c'), '-lm'], { encoding: 'utf8' });
    if (built.status !== 0) throw new Error(`cc could not build the reference: ${built.stderr.slice(0, 500)}`);
    const cycles = 30_000;
    const out = [0, 1, 2].map(() => new Float64Array(cycles));
    benchTransient(stations).run(cycles * PER_CYCLE, out);
    const ratios: number[] = [];
    for (let round = 0; round < 7; round++) {
      const run = benchTransient(stations);
      const start = performance.now();
      run.run(cycles * PER_CYCLE, out);
      const own = ((performance.now() - start) * 1e6) / (cycles * PER_CYCLE);
      const [theirs, volts] = spawnSync(program, [String(cycles)], { encoding: 'utf8' })
        .stdout.split(' ')
        .map(Number);
      if (!(Math.abs(out[0][cycles - 1] / volts - 1) < 1e-3))
        throw new Error(`the two programs differ: ${out[0][cycles - 1]} V and ${volts} V`);
      ratios.push(own / theirs);
    }
    return ratios.sort((a, b) => a - b)[3];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (!compiler) console.error('No C compiler (cc) here: the transient is not set against rfstep.c.');

const steps = 10_000;
const running = benchTransient(1);
export const measurements: Measurement[] = [
  {
    name: 'transient, one station',
    unit: 'step',
    run: () => {
      running.run(steps);
      return steps;
    },
  },
  ...(compiler
    ? [1, 2].map((n) => ({
        name: `transient, ${n === 1 ? 'one station' : 'two stations'}: time of a step`,
        unit: 'times that of rfstep.c at -O2',
        measure: () => transientAgainstC(n),
        goal: { atMost: 1.5 },
      }))
    : []),
];
