/**
 * The name records of a TrueType font that tell its family; the rest (copyright, licence) stay.
 * @type {Readonly<Record<number, string>>}
 */
const NAMED = { 1: 'family', 2: 'style', 3: 'unique', 4: 'full', 6: 'postscript', 16: 'family', 17: 'style' };

/**
 * A TrueType font under another name. Layout of the tables: OpenType specification 1.9, "Font file" and "name".
 * @param {Buffer} font
 * @param {{ family: string, style: string }} name
 * @returns {Buffer}
 */
export function renamedFont(font, { family, style }) {
  const full = `${family} ${style}`;
  /** @type {Readonly<Record<string, string>>} */
  const texts = { family, style, full, unique: `3.52;${full}`, postscript: `${family.replaceAll(' ', '')}-${style}` };
  const tables = tablesOf(font).map((table) =>
    table.tag === 'name' ? { ...table, data: nameTable(table.data, texts) } : table,
  );
  return assembled(font.readUInt32BE(0), tables);
}

/** @typedef {{ tag: string, data: Buffer }} Table */

/** @param {Buffer} font */
function tablesOf(font) {
  return Array.from({ length: font.readUInt16BE(4) }, (_, k) => {
    const at = 12 + 16 * k;
    const [offset, length] = [font.readUInt32BE(at + 8), font.readUInt32BE(at + 12)];
    return { tag: font.toString('latin1', at, at + 4), data: font.subarray(offset, offset + length) };
  });
}

/**
 * @param {Buffer} old
 * @param {Readonly<Record<string, string>>} texts
 */
function nameTable(old, texts) {
  const [count, strings] = [old.readUInt16BE(2), old.readUInt16BE(4)];
  const records = Array.from({ length: count }, (_, k) => {
    const at = 6 + 12 * k;
    const [platform, encoding, language, id, length, offset] = [0, 2, 4, 6, 8, 10].map((o) => old.readUInt16BE(at + o));
    const text = old.subarray(strings + offset, strings + offset + length);
    const own = NAMED[id] && texts[NAMED[id]];
    return { platform, encoding, language, id, text: own === undefined ? text : encoded(own, platform) };
  });
  const head = Buffer.alloc(6 + 12 * records.length);
  head.writeUInt16BE(0, 0);
  head.writeUInt16BE(records.length, 2);
  head.writeUInt16BE(head.length, 4);
  let offset = 0;
  for (const [k, { platform, encoding, language, id, text }] of records.entries()) {
    for (const [i, value] of [platform, encoding, language, id, text.length, offset].entries())
      head.writeUInt16BE(value, 6 + 12 * k + 2 * i);
    offset += text.length;
  }
  return Buffer.concat([head, ...records.map(({ text }) => text)]);
}

/**
 * One byte a letter on platform 1, two elsewhere.
 * @param {string} text
 * @param {number} platform
 */
const encoded = (text, platform) =>
  platform === 1 ? Buffer.from(text, 'latin1') : Buffer.from(text, 'utf16le').swap16();

/**
 * @param {number} version
 * @param {readonly Table[]} tables
 */
function assembled(version, tables) {
  const head = Buffer.alloc(12 + 16 * tables.length);
  const entry = Math.floor(Math.log2(tables.length));
  head.writeUInt32BE(version, 0);
  for (const [i, value] of [tables.length, 16 * 2 ** entry, entry, 16 * (tables.length - 2 ** entry)].entries())
    head.writeUInt16BE(value, 4 + 2 * i);
  let offset = head.length;
  const parts = [];
  let headAt = 0;
  for (const [k, { tag, data: given }] of tables.entries()) {
    const data = Buffer.from(given);
    if (tag === 'head') {
      headAt = offset;
      data.writeUInt32BE(0, 8);
    }
    const padded = Buffer.concat([data, Buffer.alloc(-data.length & 3)]);
    head.write(tag, 12 + 16 * k, 'latin1');
    head.writeUInt32BE(sumOf(padded), 16 + 16 * k);
    head.writeUInt32BE(offset, 20 + 16 * k);
    head.writeUInt32BE(data.length, 24 + 16 * k);
    parts.push(padded);
    offset += padded.length;
  }
  const font = Buffer.concat([head, ...parts]);
  font.writeUInt32BE((0xb1b0afba - sumOf(font)) >>> 0, headAt + 8);
  return font;
}

/** @param {Buffer} data */
function sumOf(data) {
  let sum = 0;
  for (let at = 0; at < data.length; at += 4) sum = (sum + data.readUInt32BE(at)) >>> 0;
  return sum;
}
