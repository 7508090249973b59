import { spawn } from 'node:child_process';

/** Is there a person with a screen in front of this process? */
function hasScreen(env = process.env) {
  if (env.CI && env.CI !== 'false') return false;
  if (process.platform === 'darwin' || process.platform === 'win32') return !env.SSH_CONNECTION;
  return Boolean(env.DISPLAY || env.WAYLAND_DISPLAY);
}

/**
 * Opens an address in the person's own browser, if there is a screen to see it on. A failure is no matter: the address
 * has been printed.
 * @param {string} url
 */
export function openInBrowser(url) {
  if (!hasScreen()) return;
  const [command, ...args] =
    process.platform === 'darwin'
      ? ['open', url]
      : process.platform === 'win32'
        ? ['cmd', '/c', 'start', '', url]
        : ['xdg-open', url];
  const child = spawn(command, args, { stdio: 'ignore', detached: true });
  child.on('error', () => {});
  child.unref();
}
