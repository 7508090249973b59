import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const has = (program: string): boolean => spawnSync(program, ['-v']).error === undefined;

/** poppler, installed where this is Debian and we may. @returns why it is not there, if so. */
export function withoutPoppler(): string | undefined {
  if (has('pdftoppm')) return undefined;
  if (!existsSync('/etc/debian_version') || process.getuid?.() !== 0)
    return 'pdftoppm (poppler-utils) is not installed here: rendered PDFs are not measured.';
  const install = ['-o', 'DPkg::Lock::Timeout=300', 'install', '-y', 'poppler-utils'];
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  spawnSync('apt-get', install, { env });
  if (!has('pdftoppm')) {
    spawnSync('apt-get', ['update'], { env });
    spawnSync('apt-get', install, { env });
  }
  return has('pdftoppm') ? undefined : 'poppler-utils could not be installed: rendered PDFs are not measured.';
}

/** A page as grey values, from pdftoppm’s portable greymap. */
export function rendered(pdf: string, page: number, dpi: number, box: { x: number; y: number; w: number; h: number }) {
  const px = (mm: number): string => String(Math.round((mm * dpi) / 25.4));
  const done = spawnSync(
    'pdftoppm',
    [
      '-gray',
      '-r',
      String(dpi),
      '-f',
      String(page),
      '-l',
      String(page),
      '-x',
      px(box.x),
      '-y',
      px(box.y),
      '-W',
      px(box.w),
      '-H',
      px(box.h),
      pdf,
    ],
    { maxBuffer: 1e9 },
  );
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(done.stdout.subarray(0, 40).toString('latin1'));
  if (!head) throw new Error(done.stderr.toString());
  const [width, height] = [Number(head[1]), Number(head[2])];
  const pixels = done.stdout.subarray(head[0].length);
  return { width, height, dark: (x: number, y: number): boolean => pixels[y * width + x] < 128 };
}
