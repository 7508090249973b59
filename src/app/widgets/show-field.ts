import { stageOf } from '../description/places.ts';
import type { SetView } from '../state/set-view.ts';

/** Opens the workbench where a path of the description is edited, and puts the focus on its field or what is nearest. */
export function showField(stage: SetView['stage'], path: string): void {
  stage.value = stageOf(path);
  requestAnimationFrame(() => {
    // A field that is not there yet (a part left out) is made in the part around it.
    for (let at = path; at; at = at.replace(/(^|\.)[^.]*$/, '')) {
      const field = document.getElementById(`f-${at}`);
      if (!field) continue;
      field.closest('details')?.setAttribute('open', '');
      field.focus();
      field.scrollIntoView({ block: 'center' });
      return;
    }
    showWorkbench();
  });
}

/** Brings the workbench to where it is seen, for those who have it below the fold. */
export function showWorkbench(): void {
  const workbench = document.getElementById('workbench');
  workbench?.focus({ preventScroll: true });
  workbench?.scrollIntoView({ block: 'start' });
}
