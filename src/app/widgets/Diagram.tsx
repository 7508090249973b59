import { useMemo } from 'preact/hooks';
import { drawCircuit } from '../../outputs/drawings/index.ts';
import { sceneToSvg } from '../../outputs/scene/index.ts';
import { stageOf } from '../description/places.ts';
import { useOpenSet } from '../state/set-context.ts';
import { DrawnSvg } from './DrawnSvg.tsx';
import { useLater, useNear } from './use-near.ts';

/** The circuit as the trade draws it; choosing a part opens its workbench. */
export function CircuitDiagram() {
  const { receptionSet, stage } = useOpenSet();
  const { isNear, holder } = useNear();
  const set = useLater(receptionSet.value, isNear);
  const drawn = useMemo(() => {
    try {
      const scene = set && drawCircuit(set);
      return scene && { svg: sceneToSvg(scene, { interactive: true }), width: scene.width };
    } catch {
      // A set that cannot be drawn is a set that cannot be built; its field says why.
      return undefined;
    }
  }, [set]);
  const choose = (target: EventTarget | null): boolean => {
    const part = (target as Element | null)?.closest?.('[data-part]')?.getAttribute('data-part');
    if (!part) return false;
    stage.value = stageOf(part);
    return true;
  };
  return (
    <figure
      class="drawing part-drawing circuit-diagram"
      ref={holder}
      style={drawn && { '--drawn-width': `${drawn.width}px` }}
    >
      {/* The parts inside are the buttons; this only listens. */}
      <DrawnSvg
        svg={drawn?.svg ?? ''}
        onClick={(event) => choose(event.target)}
        onKeyDown={(event) => {
          if ((event.key === 'Enter' || event.key === ' ') && choose(event.target)) event.preventDefault();
        }}
      />
    </figure>
  );
}
