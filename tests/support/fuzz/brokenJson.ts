/** A JSON value with something in it changed, as a slip of an editor or of another program changes it. */
import type { Draw } from './draw';
import { junkCell } from './junk';

type Fields = Readonly<Record<string, unknown>>;

/** One change somewhere inside; the value that is given stays as it is. */
export function brokenJson(draw: Draw, value: unknown): unknown {
  const isLeaf = typeof value !== 'object' || value === null;
  if (isLeaf || draw.oneIn(6)) return junkJson(draw);
  if (Array.isArray(value)) return brokenList(draw, value);
  const keys = Object.keys(value);
  if (keys.length === 0) return { [draw.text()]: junkJson(draw) };
  return brokenFields(draw, value as Fields, draw.pick(keys));
}

function brokenFields(draw: Draw, fields: Fields, key: string): unknown {
  const { [key]: inner, ...others } = fields;
  switch (draw.whole(0, 9)) {
    case 0:
      return others;
    case 1:
      return { ...others, [key.slice(1)]: inner };
    case 2:
      return { ...fields, [draw.pick(['', 'constructor', 'toString', 'lenght', 'Width'])]: inner };
    default:
      return { ...fields, [key]: brokenJson(draw, inner) };
  }
}

function brokenList(draw: Draw, list: readonly unknown[]): unknown {
  if (list.length === 0) return [junkJson(draw)];
  const at = draw.whole(0, list.length - 1);
  switch (draw.whole(0, 7)) {
    case 0:
      return list.filter((_, i) => i !== at);
    case 1:
      return [...list, list[at]];
    case 2:
      return { ...list };
    default:
      return list.map((item, i) => (i === at ? brokenJson(draw, item) : item));
  }
}

function junkJson(draw: Draw): unknown {
  switch (draw.whole(0, 9)) {
    case 0:
      return draw.pick<unknown>([null, true, false, [], {}, [[]], [null], { length: 1 }, '']);
    case 1:
      return 'x'.repeat(draw.pick([201, 2001, 5000]));
    default:
      return jsonOf(junkCell(draw));
  }
}

/** What JSON can hold of it. */
function jsonOf(value: unknown): unknown {
  const text = JSON.stringify(value);
  return text === undefined ? null : JSON.parse(text);
}
