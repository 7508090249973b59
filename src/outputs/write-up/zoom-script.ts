/**
 * The one script of a write-up: draws the wave between two sliders. It stands here as text because its digest is in the
 * page's policy and it must come out the same from every build.
 */
export const ZOOM_SCRIPT = `'use strict';
(() => {
  const { span, rows } = JSON.parse(document.getElementById('wave').textContent);
  for (const row of rows) {
    const bytes = Uint8Array.from(atob(row.samples), (letter) => letter.charCodeAt(0));
    row.samples = new Int16Array(bytes.buffer);
  }
  const [canvas, zoom, along, shown, from] = ['drawing', 'zoom', 'along', 'shown', 'from'].map((id) =>
    document.getElementById('wave-' + id),
  );
  const time = (s) => (s < 1e-3 ? (s * 1e6).toPrecision(3) + ' µs' : (s * 1e3).toPrecision(3) + ' ms');
  const volts = (v) => (v < 1 ? (v * 1e3).toPrecision(3) + ' mV' : v.toPrecision(3) + ' V');
  const draw = () => {
    const scale = devicePixelRatio || 1;
    const width = canvas.clientWidth;
    const height = canvas.clientHeight;
    canvas.width = Math.max(1, Math.round(width * scale));
    canvas.height = Math.max(1, Math.round(height * scale));
    const pen = canvas.getContext('2d');
    pen.scale(scale, scale);
    const length = span * 500 ** -zoom.value;
    const start = (span - length) * along.value;
    shown.textContent = zoom.ariaValueText = time(length);
    from.textContent = along.ariaValueText = time(start);
    const tall = height / rows.length;
    rows.forEach(({ title, largest, samples }, i) => {
      const middle = (i + 0.55) * tall;
      const y = (x) => middle - (0.36 * tall * x) / 32767;
      pen.strokeStyle = '#d9ccb5';
      pen.beginPath();
      pen.moveTo(0, middle);
      pen.lineTo(width, middle);
      pen.stroke();
      pen.strokeStyle = '#b35a1f';
      pen.beginPath();
      const at = (px) => ((start + (length * px) / width) / span) * samples.length;
      for (let px = 0; px < width; px++) {
        const first = Math.min(samples.length - 1, Math.floor(at(px)));
        const last = Math.min(samples.length - 1, Math.floor(at(px + 1)));
        let low = samples[first];
        let high = low;
        for (let k = first + 1; k <= last; k++) {
          low = Math.min(low, samples[k]);
          high = Math.max(high, samples[k]);
        }
        if (px === 0) pen.moveTo(px, y(samples[first]));
        pen.lineTo(px, y(high));
        if (high !== low) pen.lineTo(px, y(low));
      }
      pen.stroke();
      pen.fillStyle = '#261f18';
      pen.font = '14px Arial, sans-serif';
      pen.fillText(title + ', ±' + volts(largest), 4, i * tall + 14);
    });
  };
  zoom.addEventListener('input', draw);
  along.addEventListener('input', draw);
  addEventListener('resize', draw);
  draw();
})();`;
