/** The page of a room worked by keyboard and pointer: what is typed, drawn and told. */
import { afterAll, describe, expect, test } from 'vitest';
import { pieceWords } from '../../../src/sidebar/drawing/pieceWords';
import { unpackBlock } from '../../../src/tabs/packed';
import { takeoff } from '../../../src/takeoff/takeoff';
import { plainRoom } from '../../support/roomEntries';
import { openSidebar } from '../../support/sidebarPage';

const sidebar = await openSidebar();
const { page, errors, open, field, problemAt, focusedId, fold, tabTo, type, planned, fillPlain } = sidebar;
afterAll(() => sidebar.close());

const roomArea = () => page.locator('#numbers dl div', { hasText: /^Room/ }).locator('dd').textContent();

/** Opens a section by keyboard. */
async function pressFold(heading: string): Promise<void> {
  await page.locator('#form summary', { hasText: heading }).focus();
  await page.keyboard.press('Enter');
}

test('an L-shaped room is typed, seen and filled by keyboard alone', { timeout: 90_000 }, async () => {
  await open();
  await pressFold('Measured by');
  await tabTo('field-shape.kind');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  expect(await page.locator('input[name="shape.kind"]:checked').inputValue()).toBe('walls in order');
  await field('shape.walls.0.length').focus();
  const walls = [
    ["16'", 'R'],
    ["12'", 'R'],
    ["9'", 'R'],
    ["5'", 'L'],
    ["7'", 'R'],
    ["7'", 'R'],
  ];
  // Four walls are there; Enter goes on to the next, and makes it where there is none.
  for (const [i, [length, turn]] of walls.entries()) {
    if (i > 0) await page.keyboard.press('Enter');
    expect(await focusedId()).toBe(`field-shape.walls.${i}.length`);
    await page.keyboard.type(length);
    await type(`shape.walls.${i}.turn`, turn);
    // Three walls are drawn as they were walked, with the end that is still open.
    if (i === 2) await page.waitForSelector('#drawing .walk-end');
  }
  // The walls stand there before the planks are typed.
  await page.waitForSelector('#drawing path.bare');
  await type('product.plankLength', '48');
  await type('product.plankWidth', '6');
  await type('product.planksPerBox', '8');
  await pressFold('Name, units');
  await type('name', 'Den');
  await planned();
  // By hand: 16 ft x 7 ft + 9 ft x 5 ft = 157 sq ft.
  expect(await roomArea()).toBe('157 sq ft');
  expect(await page.locator('#echo').textContent()).toBe('6 walls = 157 sq ft');
  const drawnPieces = await page
    .locator('#drawing [data-piece]')
    .evaluateAll((all) => all.map((one) => (one as SVGElement).dataset.piece));
  await tabTo('fill-button');
  await page.keyboard.press('Enter');
  await page.waitForSelector('text=/3 tabs filled in [0-9.]+ s/');
  const written = await page.evaluate(() => window.sheet.written);
  expect(written.map(({ title }) => title)).toEqual(['Rooms', 'Cut list - Den', 'Floor plan - Den']);
  const list = unpackBlock(written[1]).cells.map((row) => row.map(({ value }) => ('text' in value ? value.text : '')));
  const from = list.findIndex((row) => row.includes('1-1'));
  expect(list.slice(from, from + drawnPieces.length).map((row) => row[1])).toEqual(drawnPieces);
  // Past the two buttons beside it and the way to the rooms.
  for (let i = 0; i < 4; i++) await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect.poll(() => page.evaluate(() => window.sheet.shown)).toEqual(['Cut list - Den']);
  expect(errors).toEqual([]);
});

test('a plain room takes no more than 30 keys and 3 presses, from opening to a filled list', async () => {
  await open();
  let keyCount = 0;
  const press = async (...keys: string[]) => {
    for (const key of keys) await page.keyboard.press(key);
    keyCount += keys.length;
  };
  // The room of the README, every mark typed: the keyboard is in the first field from the start.
  const fields = [`13' 4"`, `10' 9"`, '48', '7 1/2', '10'];
  for (const [i, text] of fields.entries()) await press(...(i > 0 ? ['Tab'] : []), ...text);
  await page.locator('#fill-button').click();
  await page.waitForSelector('text=/3 tabs filled/');
  expect(keyCount).toBeLessThanOrEqual(30);
  expect(await page.locator('#headline').textContent()).toContain('60\u00a0planks');
  // A room that was given no name has one from now on.
  expect(await page.evaluate(() => window.sheet.written.map(({ title }) => title))).toContain('Cut list - Room 1');
  expect(await field('name').inputValue()).toBe('Room 1');
});

describe('problems', () => {
  test('are not told of a form in which nothing is typed, and of a blank field once it was left after that', async () => {
    await open();
    // Whoever opened the sidebar begins to type at once; looking round in it is no mistake.
    expect(await focusedId()).toBe('field-shape.length');
    await fold('Measured by');
    await page.locator('input[name="shape.kind"][value="rectangles"]').click();
    await page.locator('input[name="shape.kind"][value="rectangle"]').click();
    for (let i = 0; i < 6; i++) await page.keyboard.press('Tab');
    await page.waitForFunction(() => /Still to type/.test(document.querySelector('.wrong-line')?.textContent ?? ''));
    expect(await page.locator('.problems:visible').count()).toBe(0);
    await field('shape.width').fill('10');
    await field('shape.length').focus();
    await page.keyboard.press('Tab');
    await problemAt('shape.length').waitFor();
    expect(await problemAt('shape.length').textContent()).toContain('Length is blank');
    expect(await page.locator('.problems:visible').count()).toBe(1);
  });

  test('stand at their field, are pointed to by it, and go when it is put right', async () => {
    await open();
    await type('shape.width', '12-6');
    await problemAt('shape.width').waitFor();
    expect(await problemAt('shape.width').textContent()).toContain('"12-6" is not a length');
    expect(await field('shape.width').getAttribute('aria-invalid')).toBe('true');
    expect(await field('shape.width').getAttribute('aria-describedby')).toBe('problem-shape.width');
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type(`12' 6`);
    await problemAt('shape.width').waitFor({ state: 'hidden' });
    expect(await field('shape.width').getAttribute('aria-invalid')).toBeNull();
  });

  test('are all told when the button is pressed, and the first has the keyboard', async () => {
    await open();
    await tabTo('fill-button');
    await page.keyboard.press('Enter');
    await page.waitForSelector('text=/Not filled yet/');
    expect(await page.locator('.problems:visible').count()).toBe(4);
    expect(await focusedId()).toBe('field-shape.length');
    expect(await page.locator('.wrong-line').textContent()).toContain('4 to fix. Length is blank');
    expect(await page.evaluate(() => window.sheet.written.length)).toBe(0);
  });

  test('that are put right take "not filled" with them', async () => {
    await open();
    await page.locator('#fill-button').click();
    await page.waitForSelector('text=/Not filled yet/');
    await fillPlain();
    expect(await page.locator('#fill .told').textContent()).toBe('');
  });

  test('are heard, and not before the field is left', async () => {
    await open();
    const heard = () => page.locator('#announced').textContent();
    await type('shape.width', '12-6');
    await problemAt('shape.width').waitFor();
    expect(await heard()).toBe('');
    await page.keyboard.press('Tab');
    await expect.poll(heard).toContain('Width: "12-6" is not a length.');
    // All at once they are counted, not read out one by one.
    await page.locator('#fill-button').click();
    await expect.poll(heard).toMatch(/Length is blank\..* more to fix\.$/);
  });

  test('at the last field in view come out from under the pane', async () => {
    await open();
    await page.setViewportSize({ width: 285, height: 640 });
    await field('shape.length').fill('12');
    await field('product.plankLength').focus();
    const hidden = () =>
      page.evaluate(() => {
        const box = document.getElementById('problem-product.plankLength')?.getBoundingClientRect();
        return (box?.bottom ?? 0) - (document.querySelector('main')?.getBoundingClientRect().bottom ?? 0);
      });
    // The field stands at the very edge of the pane, and so does its neighbour, which is next.
    await page.evaluate(() => {
      const box = document.getElementById('field-product.plankLength')?.getBoundingClientRect();
      const main = document.querySelector('main');
      if (box && main) main.scrollTop += box.bottom - main.getBoundingClientRect().bottom;
    });
    await page.keyboard.press('Tab');
    await problemAt('product.plankLength').waitFor();
    await expect.poll(hidden).toBeLessThanOrEqual(0);
  });

  test('of a section that is shut open it', async () => {
    await open();
    await fold('Rules');
    await field('rules.kerf').fill('a bit');
    await fold('Rules');
    await field('rules.kerf').waitFor();
    expect(await problemAt('rules.kerf').textContent()).toContain('Kerf');
  });

  test('have beside them what is still to be typed, and a press leads there', async () => {
    await open();
    await field('shape.length').fill('12');
    const line = page.locator('.wrong-line');
    await expect.poll(() => line.textContent()).toBe('Still to type: width, plank length, plank width');
    await line.click();
    expect(await focusedId()).toBe('field-shape.width');
  });

  test('stand in the foot as well, and a press leads to them', async () => {
    await open();
    await fillPlain();
    await fold('Rules');
    await field('rules.kerf').fill('a bit');
    await fold('Rules');
    const line = page.locator('.wrong-line');
    await expect.poll(() => line.textContent()).toContain('Kerf');
    await field('shape.length').focus();
    await line.click();
    expect(await focusedId()).toBe('field-rules.kerf');
  });

  test('of a plan that breaks a rule stand beside the answer', async () => {
    await open();
    await fillPlain();
    await fold('Rules');
    // By hand: half a plank is 24", and two joints in each 48" cannot be 30" apart.
    await field('rules.minStagger').fill('30');
    await page.waitForFunction(() => /stagger/.test(document.querySelector('.wrong-line')?.textContent ?? ''));
    await page.locator('.wrong-line').click();
    expect(await focusedId()).toBe('field-rules.minStagger');
    // The same at its place in the drawing, by pointer and by key.
    const mark = page.locator('#drawing .fault').first();
    await mark.hover();
    expect(await page.locator('#piece').textContent()).toContain('under the minimum stagger of 30"');
    await field('shape.length').focus();
    await mark.click();
    expect(await focusedId()).toBe('field-rules.minStagger');
    await mark.press('Enter');
    expect(await focusedId()).toBe('field-rules.minStagger');
    await page.getByRole('button', { name: 'Large view' }).click();
    await page.locator('dialog .fault').first().click();
    expect(await focusedId()).toBe('field-rules.minStagger');
    await expect.poll(() => page.locator('dialog').count()).toBe(0);
  });
});

describe('the drawing', () => {
  test('leads from a wall to its field, and marks the walls that are typed', async () => {
    await open();
    await fillPlain();
    await field('shape.length').focus();
    expect(
      await page.locator('.typed-in').evaluateAll((all) => all.map((one) => one.getAttribute('data-mark'))),
    ).toEqual(['wall 1', 'wall 3']);
    await page.locator('[data-mark="wall 2"]').dispatchEvent('click');
    expect(await focusedId()).toBe('field-shape.width');
  });

  test('shows a cut-out where it is typed, and leads back to it', async () => {
    await open();
    await fillPlain();
    await fold('Cut-outs');
    await page.locator('[id="add-cutouts"]').click();
    for (const [key, text] of [
      ['wall', '1'],
      ['along', '3'],
      ['length', '2'],
      ['depth', '1'],
    ]) {
      await field(`cutouts.0.${key}`).fill(text);
    }
    await page.waitForSelector('#drawing .cutout.typed-in');
    expect(await page.locator('[data-section="cutouts"] .set').textContent()).toBe('rectangle');
    await fold('Cut-outs');
    // The floor is planned just then: a drawing that is replaced while it is pressed is pressed again.
    await expect
      .poll(async () => {
        await page.locator('#drawing .cutout').click();
        return focusedId();
      })
      .toBe('field-cutouts.0.length');
  });

  test('has no number under 9 pixels, at whatever height of the page', async () => {
    await open();
    await fillPlain();
    const smallest = () =>
      page.locator('#drawing text').evaluateAll((all) => {
        const sizes = all.map((one) => {
          const svg = (one as SVGElement).ownerSVGElement;
          const scale = (svg?.getBoundingClientRect().width ?? 0) / (svg?.viewBox.baseVal.width || 1);
          return Number.parseFloat(getComputedStyle(one).fontSize) * scale;
        });
        return sizes.length > 4 ? Math.min(...sizes) : 0;
      });
    for (const height of [480, 640, 900]) {
      await page.setViewportSize({ width: 300, height });
      await expect.poll(smallest).toBeGreaterThanOrEqual(8.99);
    }
  });

  test('of a floor too large for its pieces shows the rows, and the large view all of them', async () => {
    await open();
    await field('shape.length').fill('100');
    await field('shape.width').fill(`62'`);
    await field('product.plankLength').fill('48');
    await field('product.plankWidth').fill('7.5');
    await planned();
    await page.waitForSelector('#drawing .row-number');
    expect(await page.locator('#drawing [data-piece]').count()).toBe(0);
    await page.getByRole('button', { name: 'Large view' }).click();
    for (let i = 0; i < 7; i++) await page.getByRole('button', { name: 'Nearer' }).click();
    await page.waitForSelector('dialog [data-piece]');
    await page.keyboard.press('Escape');
  });

  test('folds, and the answer stays', async () => {
    await open();
    await fillPlain();
    await page.getByRole('button', { name: 'Fold the drawing' }).click();
    expect(await page.locator('#drawing').isVisible()).toBe(false);
    expect(await page.locator('#headline').isVisible()).toBe(true);
    await page.getByRole('button', { name: 'Show the drawing' }).click();
    await page.waitForSelector('#drawing [data-piece]');
  });
});

describe('the plan on the page', () => {
  const plan = takeoff({ ...plainRoom, name: 'Room 1', shape: { kind: 'rectangle', length: 12, width: 10 } });
  if (plan.status !== 'planned') throw new Error('The room can be planned.');
  const expected = plan.takeoff.pieces.map((piece) => pieceWords(piece, 'us'));
  const told = () =>
    page.locator('#drawing [data-piece]').evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')));

  async function typePlain(): Promise<void> {
    await field('shape.length').fill('12');
    await field('shape.width').fill('10');
    await field('product.plankLength').fill(String(plainRoom.product.plankLength));
    await field('product.plankWidth').fill(String(plainRoom.product.plankWidth));
    await planned();
  }

  test('is worked out in a thread of its own, and is the one that is worked out anywhere else', async () => {
    await open();
    await typePlain();
    expect(page.workers().length).toBeGreaterThan(0);
    expect(await told()).toEqual(expected);
  });

  test('is the same where the page may have no other thread', async () => {
    await open({}, 'refused');
    await typePlain();
    expect(page.workers()).toHaveLength(0);
    expect(await told()).toEqual(expected);
  });

  test('is the same where threads are refused only after they were asked for', async () => {
    await open({}, 'fails');
    await typePlain();
    expect(await told()).toEqual(expected);
  });

  test('of what was typed before is dropped', async () => {
    await open();
    await typePlain();
    for (const length of ['60', '70', '80', '12']) await field('shape.length').fill(length);
    await page.waitForFunction(() => /planning/.test(document.getElementById('headline')?.textContent ?? ''));
    await planned();
    expect(await told()).toEqual(expected);
  });
});

test('at 480 pixels of height the drawing, the answer and the button are in view', async () => {
  await open();
  await page.setViewportSize({ width: 300, height: 480 });
  await fillPlain();
  for (const id of ['field-shape.length', 'drawing', 'headline', 'fill-button']) {
    const box = await page.locator(`[id="${id}"]`).boundingBox();
    expect(box?.y ?? -1).toBeGreaterThanOrEqual(0);
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(480);
  }
});

test('an example is there to look at, and thrown away again', async () => {
  await open();
  await page.getByRole('button', { name: 'Load an example room' }).click();
  await planned();
  expect(await page.locator('#drawing .doorway').count()).toBe(1);
  await page.getByRole('button', { name: 'Throw it away' }).click();
  await expect.poll(() => field('shape.length').inputValue()).toBe('');
  await page.getByRole('button', { name: 'Load an example room' }).waitFor();
});

test('a piece opens its marking drawing, and Escape leads back to it', async () => {
  await open();
  await fillPlain();
  await page.locator('[data-piece="1-1"]').focus();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Piece 2-1' }).waitFor();
  expect(await page.locator('dialog dt').allTextContents()).toContain('Length');
  await page.keyboard.press('Escape');
  await page.locator('dialog').waitFor({ state: 'detached' });
  expect(await page.evaluate(() => (document.activeElement as SVGElement).dataset.piece)).toBe('2-1');
});

describe('the marking drawing', () => {
  const shape = () => page.locator('dialog .cut-piece');
  const across = async () => (await shape().boundingBox())?.width ?? 0;
  const left = async () => (await shape().boundingBox())?.x ?? 0;

  async function openPiece(): Promise<void> {
    await open();
    await fillPlain();
    await page.locator('[data-piece="2-2"]').focus();
    await page.keyboard.press('Enter');
    await shape().waitFor();
  }

  test('comes nearer at the wheel, and the place under the pointer stays', async () => {
    await openPiece();
    const before = await shape().boundingBox();
    if (!before) throw new Error('The piece is in view.');
    const [x, y] = [before.x + before.width / 4, before.y + before.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.wheel(0, -400);
    await expect.poll(across).toBeGreaterThan(before.width * 1.5);
    expect(Math.abs((await left()) + (await across()) / 4 - x)).toBeLessThan(2);
  });

  test('comes nearer and moves by keys, and 0 shows all of it again', async () => {
    await openPiece();
    const whole = await across();
    await page.locator('.marking-paper').focus();
    await page.keyboard.press('+');
    await page.keyboard.press('+');
    await expect.poll(across).toBeGreaterThan(whole * 2);
    const before = await left();
    await page.keyboard.press('ArrowLeft');
    await expect.poll(left).toBeGreaterThan(before + 50);
    await page.keyboard.press('0');
    await expect.poll(across).toBeCloseTo(whole, 1);
    await page.getByRole('button', { name: 'Nearer' }).click();
    await expect.poll(across).toBeGreaterThan(whole * 1.4);
    // The next piece begins with all of it.
    await page.getByRole('button', { name: 'Next' }).click();
    await expect.poll(across).toBeLessThan(whole * 1.1);
  });

  test('keeps the number of its length in view', async () => {
    await openPiece();
    await page.locator('.marking-paper').focus();
    for (let i = 0; i < 3; i++) await page.keyboard.press('+');
    await page.keyboard.press('ArrowRight');
    const paper = await page.locator('.marking-paper').boundingBox();
    const number = page.locator('dialog .dimension-text', { hasText: '48"' });
    await expect
      .poll(async () => {
        const seen = await number.boundingBox();
        return paper && seen && seen.x >= paper.x && seen.x + seen.width <= paper.x + paper.width;
      })
      .toBe(true);
  });

  test('comes nearer under two fingers', async () => {
    await openPiece();
    const before = await across();
    await page.locator('.marking-paper').evaluate((paper) => {
      const { x, y, width, height } = paper.getBoundingClientRect();
      const finger = (name: string, pointerId: number, off: number) =>
        paper.dispatchEvent(
          new PointerEvent(name, { pointerId, clientX: x + width / 2 + off, clientY: y + height / 2, bubbles: true }),
        );
      finger('pointerdown', 1, -20);
      finger('pointerdown', 2, 20);
      finger('pointermove', 1, -60);
      finger('pointermove', 2, 60);
      finger('pointerup', 1, -60);
      finger('pointerup', 2, 60);
    });
    await expect.poll(across).toBeGreaterThan(before * 2.5);
  });

  test('is printed on one page', async () => {
    await openPiece();
    await page.evaluate(() => {
      window.print = () => {};
    });
    await page.getByRole('button', { name: 'Nearer' }).click();
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    expect(pdf.match(/\/Type\s*\/Page[^s]/g)).toHaveLength(1);
    // All of it is printed, however near it was seen.
    await page.emulateMedia({ media: 'print' });
    const printed = await page.evaluate(() => {
      const [picture, piece] = ['svg', '.cut-piece'].map((one) =>
        document.querySelector<SVGGraphicsElement>(`#sheet ${one}`),
      );
      return { paper: (picture as SVGSVGElement).viewBox.baseVal.width, piece: piece?.getBBox().width ?? 0 };
    });
    await page.emulateMedia({ media: null });
    expect(printed.piece).toBeLessThan(printed.paper);
    expect(printed.piece).toBeGreaterThan(printed.paper / 2);
  });
});

describe('the floor large', () => {
  /** Without its outline, which is thicker where it is pointed at. */
  const box = () =>
    page.locator('dialog [data-piece="9-2"] path').evaluate((path) => {
      const { x, width } = (path as SVGGraphicsElement).getBBox();
      return { x, width };
    });
  const across = async () => (await box()).width;
  const left = async () => (await box()).x;

  async function openLarge(): Promise<{ x: number; y: number }> {
    await open();
    await fillPlain();
    await page.setViewportSize({ width: 900, height: 700 });
    await page.getByRole('button', { name: 'Large view' }).click();
    const seen = await page.locator('dialog [data-piece="9-2"]').boundingBox();
    if (!seen) throw new Error('The piece is in view.');
    return { x: seen.x + seen.width / 2, y: seen.y + seen.height / 2 };
  }

  test('comes nearer at the wheel, and the place under the pointer stays', async () => {
    const { x, y } = await openLarge();
    const before = await across();
    await page.mouse.move(x, y);
    await page.mouse.wheel(0, -400);
    await expect.poll(across).toBeGreaterThan(before * 1.5);
    const seen = await page.locator('dialog [data-piece="9-2"]').boundingBox();
    expect(Math.abs((seen?.x ?? 0) + (seen?.width ?? 0) / 2 - x)).toBeLessThan(2);
    await page.locator('.large-paper').press('0');
    await expect.poll(across).toBeCloseTo(before, 1);
  });

  test('moves as it is dragged, and what was dragged is not opened', async () => {
    const { x, y } = await openLarge();
    await page.locator('.large-paper').press('+');
    await expect.poll(async () => (await across()) > 0).toBe(true);
    await page.mouse.move(x, y);
    const before = await left();
    await page.mouse.down();
    await page.mouse.move(x - 40, y, { steps: 4 });
    await page.mouse.up();
    await expect.poll(left).toBeCloseTo(before - 40, 0);
    expect(await page.getByRole('heading', { name: /^Piece / }).count()).toBe(0);
  });

  test('comes nearer under two fingers', async () => {
    const { x, y } = await openLarge();
    const before = await across();
    await page.locator('.large-paper').evaluate(
      (paper, at) => {
        const touch = (type: string, pointerId: number, clientX: number) =>
          paper.dispatchEvent(new PointerEvent(type, { pointerId, clientX, clientY: at.y, bubbles: true }));
        touch('pointerdown', 1, at.x - 30);
        touch('pointerdown', 2, at.x + 30);
        touch('pointermove', 2, at.x + 90);
        for (const pointerId of [1, 2]) touch('pointerup', pointerId, at.x);
      },
      { x, y },
    );
    // By hand: 60 pixels between the fingers became 120.
    await expect.poll(across).toBeCloseTo(before * 2, 0);
  });

  test('is walked by keyboard beyond what is in view', async () => {
    await openLarge();
    for (let i = 0; i < 6; i++) await page.locator('.large-paper').press('+');
    await page.waitForSelector('dialog [data-piece]');
    await page.locator('dialog [data-piece][tabindex="0"]').focus();
    for (let i = 0; i < 25; i++) {
      await page.keyboard.press('ArrowUp');
      await page.waitForTimeout(30);
    }
    const label = await page.evaluate(() => (document.activeElement as SVGElement).dataset.piece ?? '');
    // By hand: 120" less two gaps of 3/8" is 20 rows of 6", the last of them ripped.
    expect(label).toMatch(/^20-/);
  });
});

test('other units change no number that is typed', async () => {
  await open();
  await fillPlain();
  await fold('Name, units');
  await page.locator('input[name="units"][value="metric"]').check();
  expect(await field('shape.length').inputValue()).toBe('12 ft');
  await planned();
  // 120 sq ft are 11.148 m2 (NIST SP 811: 1 sq ft = 0.09290304 m2).
  await expect.poll(roomArea).toBe('11.15 m²');
});

test('the printed floor takes one page', async () => {
  await open();
  await fillPlain();
  await page.evaluate(() => {
    window.print = () => {};
  });
  await page.getByRole('button', { name: 'Large view' }).click();
  await page.getByRole('button', { name: 'Print', exact: true }).click();
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page[^s]/g)).toHaveLength(1);
});

describe('long text', () => {
  const words = 'Moving the piano. ';

  test('is told at a field of a room, and not cut short', async () => {
    await open();
    await fold('Product');
    await field('product.name').fill(words.repeat(12));
    // By hand: 12 times 18 letters.
    await page.waitForSelector('text=/Product has 216 characters/');
    expect(await field('product.name').inputValue()).toHaveLength(216);
  });
});
