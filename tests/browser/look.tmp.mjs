import { openBrowser, Studio } from './studio.mjs';
const SIZES = { laptop: [1366, 768], tablet: [1024, 768], phone: [390, 844] };
const rooms = process.argv[2].split(',');
const schemes = (process.argv[3] ?? 'light').split(',');
const full = process.argv[4] === 'full';
const studio = await Studio.start();
const browser = await openBrowser();
// wait for the demo book
for (let i = 0; i < 100; i++) { const l = await studio.json('/api/evenings'); if (l.rows?.length) break; await new Promise((r) => setTimeout(r, 100)); }
for (const scheme of schemes) for (const [name, [width, height]] of Object.entries(SIZES)) {
  const context = await browser.newContext({ viewport: { width, height }, colorScheme: scheme });
  await context.addInitScript(() => localStorage.setItem('scuff.guided', 'yes'));
  const page = await context.newPage();
  page.on('pageerror', (e) => console.log('fault', e.message));
  for (const room of rooms) {
    let path = room;
    if (room === 'evening1') path = 'evening/' + (await studio.json('/api/evenings')).rows[0].id;
    if (room === 'class1') path = 'classes/' + (await studio.json('/api/classes')).classes[1].id;
    await page.goto(`${studio.address}/${path}`);
    await page.waitForTimeout(700);
    if (full) { await page.evaluate(() => { document.body.style.height='auto'; document.documentElement.style.height='auto'; }); const h = await page.evaluate(() => Math.max(...[...document.querySelectorAll('.classes,.opened,.evening,.list')].map(e => e.scrollHeight)) + 120); await page.setViewportSize({ width, height: Math.max(h, height) }); await page.waitForTimeout(150); }
    await page.screenshot({ path: `/tmp/shots/${room}-${name}-${scheme}.png` });
    await page.setViewportSize({ width, height });
  }
  await context.close();
}
await browser.close();
await studio.stop();
