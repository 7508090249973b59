import type { Reception, SetDescription } from '../../../engine/index.ts';
import {
  type Prepared,
  type Preparer,
  preparer,
  type SentScene,
  type StoryScene,
  sceneKey,
  unpacked,
  type WaveProgramme,
} from '../../../outputs/explain/index.ts';
import { explainTexts } from '../../../outputs/words/index.ts';
import type { When } from '../../description/when.ts';
import { ShownError, waveProblemText } from './scene-problem.ts';
import { type Taken, type TakeOrder, take } from './take.ts';

/** What all scenes are of. */
export interface Opening {
  readonly set?: SetDescription;
  readonly reception?: Reception;
  readonly recording?: WaveProgramme;
  readonly time?: When;
}

export type Order = { readonly open: Opening } | { readonly make: StoryScene } | { readonly take: TakeOrder };
export type MakerQuestion = Order & { readonly id: number };
export type MakerAnswer =
  | { readonly id: number; readonly sent: SentScene }
  | { readonly id: number; readonly taken: Taken }
  /** As the person reads it. */
  | { readonly id: number; readonly error: string };

/** A scene ready to be drawn. */
export interface ReadyScene {
  readonly scene: StoryScene;
  readonly prepared: Prepared;
}

/** Waves are large: so many scenes are kept. */
const KEPT = 6;

/**
 * Has scenes worked out beside the page, so that no wave ever holds it up: one at a time, and of those waiting only the
 * newest. While it works, and nobody waits, the scene that will probably come next is made as well.
 */
export class Maker {
  private worker: Worker | undefined;
  /** Only where no worker can be had. */
  private local: Preparer | undefined;
  private opening: Opening = {};
  private generation = 0;
  private wanted: StoryScene | undefined;
  private ahead: StoryScene | undefined;
  private busy: { id: number; scene: StoryScene; generation: number } | undefined;
  private count = 0;
  private readonly kept = new Map<string, Prepared>();
  private readonly orders = new Map<number, { resolve(taken: Taken): void; reject(error: Error): void }>();
  private readonly onShown: (shown: ReadyScene) => void;
  private readonly onProblem: (problem: string) => void;

  constructor(onShown: (shown: ReadyScene) => void, onProblem: (problem: string) => void) {
    this.onShown = onShown;
    this.onProblem = onProblem;
    try {
      this.worker = new Worker(new URL('./explain.worker.ts', import.meta.url), { type: 'module', name: 'explain' });
      this.worker.onmessage = ({ data }: MessageEvent<MakerAnswer>) => this.answered(data);
      this.worker.onerror = (event) => {
        event.preventDefault();
        this.withoutWorker();
      };
    } catch {
      this.withoutWorker();
    }
  }

  /** Another set, reception, recording or time of day. */
  open(opening: Opening): void {
    this.opening = opening;
    this.generation++;
    this.kept.clear();
    this.local = undefined;
    this.say({ open: opening });
  }

  /** Show this, as soon as it is made; `ahead` may be asked for next. */
  want(scene: StoryScene, ahead?: StoryScene): void {
    this.wanted = scene;
    this.ahead = ahead;
    this.next();
  }

  /** Something to take away. @throws ShownError */
  take(order: TakeOrder): Promise<Taken> {
    if (!this.worker)
      return take(this.prepareHere(), order).catch((error: unknown) => {
        throw new ShownError(waveProblemText(error));
      });
    const id = this.say({ take: order });
    return new Promise((resolve, reject) => this.orders.set(id, { resolve, reject }));
  }

  close(): void {
    this.worker?.terminate();
    this.worker = undefined;
  }

  private say(order: Order): number {
    const id = ++this.count;
    this.worker?.postMessage({ ...order, id });
    return id;
  }

  private next(): void {
    const { wanted, ahead } = this;
    if (!wanted) return;
    const key = sceneKey(wanted);
    const made = this.kept.get(key);
    if (made) {
      this.keep(key, made);
      this.onShown({ scene: wanted, prepared: made });
      if (ahead && !this.busy && !this.kept.has(sceneKey(ahead))) this.make(ahead);
    } else if (!this.busy) this.make(wanted);
  }

  private make(scene: StoryScene): void {
    if (this.worker) {
      this.busy = { id: this.say({ make: scene }), scene, generation: this.generation };
      return;
    }
    if (scene !== this.wanted) return;
    try {
      const prepared = this.prepareHere()(scene);
      this.keep(sceneKey(scene), prepared);
      this.onShown({ scene, prepared });
    } catch (error) {
      this.onProblem(waveProblemText(error));
    }
  }

  private answered(answer: MakerAnswer): void {
    const order = this.orders.get(answer.id);
    if (order) {
      this.orders.delete(answer.id);
      if ('taken' in answer) order.resolve(answer.taken);
      else order.reject(new ShownError('error' in answer ? answer.error : explainTexts.exporting.problems.failed));
      return;
    }
    const { busy, wanted } = this;
    if (busy?.id !== answer.id) return;
    this.busy = undefined;
    if (busy.generation === this.generation) {
      if ('sent' in answer) {
        const { set, recording } = this.opening;
        const prepared = unpacked(answer.sent, busy.scene, set, recording);
        const key = sceneKey(busy.scene);
        this.keep(key, prepared);
        // While something is being turned, each step on the way is shown too.
        if (wanted && key !== sceneKey(wanted) && isSameView(busy.scene, wanted))
          this.onShown({ scene: { ...wanted, settings: busy.scene.settings, rows: busy.scene.rows }, prepared });
      } else if ('error' in answer && wanted && sceneKey(busy.scene) === sceneKey(wanted)) {
        this.onProblem(answer.error);
        return;
      }
    }
    this.next();
  }

  private keep(key: string, prepared: Prepared): void {
    this.kept.delete(key);
    this.kept.set(key, prepared);
    for (const oldest of this.kept.keys()) {
      if (this.kept.size <= KEPT) break;
      this.kept.delete(oldest);
    }
  }

  private prepareHere(): Preparer {
    const { set, reception, recording, time } = this.opening;
    return (this.local ??= preparer(set, reception, recording, { time }));
  }

  /** Slower, but it works. */
  private withoutWorker(): void {
    this.worker?.terminate();
    this.worker = undefined;
    this.busy = undefined;
    for (const { reject } of this.orders.values()) reject(new ShownError(explainTexts.exporting.problems.failed));
    this.orders.clear();
    this.next();
  }
}

const isSameView = (a: StoryScene, b: StoryScene): boolean =>
  a.title === b.title &&
  a.picture === b.picture &&
  a.rows.map((r) => r.point).join() === b.rows.map((r) => r.point).join();
