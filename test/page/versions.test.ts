import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { PAGE_FOLDER } from '../../scripts/support/build.mjs';
import { serve } from '../../scripts/support/serve.mjs';
import { withPage } from '../support/browser.ts';

/** A copy of the built page that can be changed into a version of another name and title. */
function copyOfPage() {
  const folder = mkdtempSync(join(tmpdir(), 'faintwave-'));
  cpSync(PAGE_FOLDER, folder, { recursive: true });
  const change = (file: string, edit: (text: string) => string) =>
    writeFileSync(join(folder, file), edit(readFileSync(join(folder, file), 'utf8')));
  const makeVersion = (name: string, html: (text: string) => string) => {
    change('index.html', html);
    change('service-worker.js', (text) => text.replace(/faintwave-[0-9a-z]{4,}/, `faintwave-${name}`));
  };
  return { folder, makeVersion };
}

test('the page answers from the device, changes version only when asked, and goes back from a version that is broken', async () => {
  const { folder, makeVersion } = copyOfPage();
  const server = await serve(folder);
  try {
    await withPage(
      async (page) => {
        const isDrawn = () => page.getByRole('heading', { level: 1 }).waitFor();
        const ready = () => page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
        await page.goto(server.url);
        await isDrawn();
        await ready();
        await page.reload();

        makeVersion('second', (html) => html.replace('<title>', '<title>Second '));
        await page.reload();
        await page.getByText('A new version of the page is there.').waitFor();
        expect(await page.title()).not.toContain('Second');
        await page.getByRole('button', { name: 'Use it now' }).click();
        await expect.poll(() => page.title().catch(() => '')).toContain('Second');
        await isDrawn();

        // A network that takes the question and never answers.
        await page.context().route(/./, () => undefined);
        await page.reload();
        await isDrawn();
        await page.context().unroute(/./);

        makeVersion('third', (html) =>
          html.replace('Second ', 'Third ').replace(/<script type="module"[^>]*><\/script>/, ''),
        );
        await page.reload();
        await page.getByRole('button', { name: 'Use it now' }).click();
        await expect.poll(() => page.title().catch(() => '')).toContain('Third');
        for (let visit = 0; visit < 2; visit++) await page.reload();
        // The page before says that it works; that says nothing of the broken version.
        for (let visit = 0; visit < 2; visit++) {
          expect(await page.title()).toContain('Second');
          await isDrawn();
          await ready();
          await page.reload();
        }
        expect(await page.title()).toContain('Second');
        await isDrawn();
      },
      { open: false, serviceWorker: true, errorsExpected: true },
    );
  } finally {
    await server.close();
  }
});

interface Policies {
  readonly defaultPolicy: { createScriptURL(address: string): unknown };
  createPolicy(name: string, rules: object): void;
}

test('the policy of the page lets in nothing from elsewhere and nothing written into it', async () => {
  await withPage(
    async (page) => {
      await page.locator('.station').first().waitFor();
      const policy = (await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content')) ?? '';
      expect(policy).toMatch(/^default-src 'none'; script-src 'self';/);
      expect(policy).not.toMatch(/unsafe|\*|https?:/);
      const refused = page.evaluate(
        () =>
          new Promise<string>((resolve) => {
            document.addEventListener('securitypolicyviolation', (event) => {
              if (event.effectiveDirective === 'connect-src') resolve(event.blockedURI);
            });
            fetch('https://example.org/').catch(() => undefined);
          }),
      );
      expect(await refused).toContain('example.org');
      // What would bring markup or a script into the page throws unless it comes by the page's own ways.
      const ways = await page.evaluate(() => {
        const own = (globalThis as unknown as { trustedTypes: Policies }).trustedTypes;
        const script = document.createElement('script');
        const tries: Record<string, () => unknown> = {
          markup: () => {
            document.body.innerHTML = '<b>written in</b>';
          },
          script: () => {
            script.textContent = 'document.title = "written in"';
          },
          address: () => {
            script.src = 'https://example.org/script.js';
          },
          worker: () => own.defaultPolicy.createScriptURL('https://example.org/worker.js'),
          policy: () => own.createPolicy('another', {}),
        };
        const inline = document.createElement('script');
        inline.append('document.title = "written in"');
        document.body.append(inline);
        return Object.entries(tries)
          .filter(([, attempt]) => {
            try {
              attempt();
              return true;
            } catch {
              return false;
            }
          })
          .map(([name]) => name);
      });
      expect(ways).toEqual([]);
      expect(await page.title()).not.toBe('written in');
    },
    { errorsExpected: true },
  );
});
