/** The page of the whole job. */
import { afterAll, describe, expect, test } from 'vitest';
import { emptyHouse } from '../../../src/order/houseEntry';
import { jobBlock } from '../../../src/tabs/job';
import { unpackBlock } from '../../../src/tabs/packed';
import { blockValues } from '../../support/blockValues';
import { openSidebar } from '../../support/sidebarPage';

const sidebar = await openSidebar();
const { page, open, field, focusedId } = sidebar;
afterAll(() => sidebar.close());

test('problems that are put right take "not filled" with them', async () => {
  await open();
  await page.getByRole('button', { name: 'The whole job' }).click();
  await page.locator('summary', { hasText: 'Tax' }).click();
  await field('job.terms.tax').fill('a lot');
  await page.getByRole('button', { name: 'Fill the order' }).click();
  await page.locator('#job-fill .told', { hasText: 'Not filled yet' }).waitFor();
  await field('job.terms.tax').fill('8');
  await page.locator('#job-fill .told', { hasText: /^$/ }).waitFor({ state: 'attached' });
});

describe('the saved job', () => {
  const savedJob = { ...emptyHouse('us'), currency: 'kr' };
  const cells = { job: blockValues(jobBlock(savedJob)) as unknown[][] };
  const currency = () => field('job.currency');

  // A click as a person makes it: on a button that is off as well.
  const pressSave = () => page.getByRole('button', { name: 'Save' }).click({ force: true });

  async function openSlowly(): Promise<void> {
    await open(cells);
    await page.evaluate(() => {
      window.sheet.delay = 250;
    });
    await page.getByRole('button', { name: 'The whole job' }).click();
  }

  test('is not written over with a blank one before it is open', async () => {
    await openSlowly();
    await pressSave();
    await expect.poll(() => currency().inputValue(), { timeout: 10_000 }).toBe('kr');
    await page.waitForTimeout(400);
    expect(await page.evaluate(() => window.sheet.written)).toEqual([]);
  });

  test('does not take the place of what is typed meanwhile, unless that is wanted', async () => {
    await openSlowly();
    await currency().fill('$');
    await page.waitForSelector('text=/saved in this spreadsheet already/');
    expect(await currency().inputValue()).toBe('$');
    await pressSave();
    await page.waitForTimeout(400);
    expect(await page.evaluate(() => window.sheet.written)).toEqual([]);
    await page.getByRole('button', { name: 'Open it' }).click();
    await expect.poll(() => currency().inputValue(), { timeout: 10_000 }).toBe('kr');
  });

  test('is saved over by what is typed when that is wanted', async () => {
    await openSlowly();
    await currency().fill('$');
    await page.getByRole('button', { name: 'Keep typing' }).click();
    await page.getByRole('button', { name: 'Save' }).click();
    await page.waitForSelector('text=/1 tab filled/');
    const [block] = await page.evaluate(() => window.sheet.written);
    expect(blockValues(unpackBlock(block))).toContainEqual(expect.arrayContaining(['Job, Currency sign', '$']));
  });

  test('is not written over where its tab was changed, unless that is wanted', async () => {
    await open(cells);
    await page.getByRole('button', { name: 'The whole job' }).click();
    await expect.poll(() => currency().inputValue(), { timeout: 10_000 }).toBe('kr');
    await page.evaluate(
      (job) => {
        window.sheet.cells.job = job;
      },
      blockValues(jobBlock({ ...savedJob, currency: 'sk' })) as unknown[][],
    );
    await pressSave();
    await page.waitForSelector('text=/changed in its tab since it was opened here: Job, Currency sign: sk/');
    expect(await page.evaluate(() => window.sheet.written)).toEqual([]);
    await page.getByRole('button', { name: 'Open it as it is there' }).click();
    await expect.poll(() => currency().inputValue(), { timeout: 10_000 }).toBe('sk');
  });

  test('that cannot be read is asked for again', async () => {
    await open(cells);
    await page.waitForTimeout(50);
    await page.evaluate(() => {
      window.sheet.failingReads = 1;
    });
    await page.getByRole('button', { name: 'The whole job' }).click();
    await page.waitForSelector('text=/did not answer/');
    await page.getByRole('button', { name: 'Try again' }).click();
    await expect.poll(() => currency().inputValue(), { timeout: 10_000 }).toBe('kr');
  });
});

describe('long text', () => {
  test('of a list of the job is taken as far as the job takes it', async () => {
    await open();
    await page.getByRole('button', { name: 'The whole job' }).click();
    await page.locator('summary', { hasText: 'Homeowner' }).click();
    await field('job.homeowner.notIncluded').fill('painting; '.repeat(60));
    await page.getByRole('button', { name: 'Save' }).click();
    await page.waitForSelector('text=/1 tab filled/');
    const [block] = await page.evaluate(() => window.sheet.written);
    const line = blockValues(unpackBlock(block)).find(([label]) => label === 'Homeowner, Not included');
    expect(String(line?.[1]).split('painting')).toHaveLength(61);
  });
});

test('a job that could not be opened again is not saved', async () => {
  await open();
  await page.getByRole('button', { name: 'The whole job' }).click();
  const title = 'The job of all jobs. '.repeat(100);
  await page.locator('summary', { hasText: 'Homeowner' }).click();
  await field('job.homeowner.title').fill(title);
  await page.getByRole('button', { name: 'Save' }).click();
  // By hand: 100 times 21 letters.
  await page.waitForSelector('text=/Homeowner, Title has 2100 characters/');
  expect(await page.evaluate(() => window.sheet.written)).toEqual([]);
});

test('items of the job change places by keyboard', async () => {
  await open();
  await page.getByRole('button', { name: 'The whole job' }).click();
  await page.locator('summary', { hasText: 'Other items' }).click();
  for (const name of ['Skip', 'Van']) {
    await page.locator('[id="add-job.extras"]').click();
    await page.keyboard.type(name);
  }
  await page.getByRole('button', { name: 'Move Item 2 up' }).press('Enter');
  expect(await field('job.extras.0.name').inputValue()).toBe('Van');
  expect(await focusedId()).toBe('up-job.extras-0');
  await page.keyboard.press('Enter');
  expect(await field('job.extras.0.name').inputValue()).toBe('Van');
});

test('boxes side by side stand level under labels of one line and of two', async () => {
  await open();
  await page.getByRole('button', { name: 'The whole job' }).click();
  await page.locator('summary', { hasText: 'Products' }).click();
  await page.locator('[id="add-job.floors"]').click();
  const [left, right] = await Promise.all(['misCuts', 'keep'].map((key) => field(`job.floors.0.${key}`).boundingBox()));
  expect(left?.x).toBeLessThan(right?.x ?? 0);
  expect(left?.y).toBe(right?.y);
});

test('the whole job is saved as typed', async () => {
  await open();
  await page.getByRole('button', { name: 'The whole job' }).click();
  await page.locator('summary', { hasText: 'Underlay' }).click();
  await page.locator('[id="field-job.underlay.width"]').fill('3.3');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.waitForSelector('text=/1 tab filled/');
  const [block] = await page.evaluate(() => window.sheet.written);
  const rows = blockValues(unpackBlock(block)).map((row) => row.slice(0, 2).map(String));
  expect(block.title).toBe('Job');
  expect(rows).toContainEqual(['Underlay, Width of the roll', '3.3']);
});

describe('parts that the floors do not need', () => {
  const unneeded = () =>
    page.locator('#job-form > details', { has: page.locator('summary', { hasText: /^Not needed/ }) });
  const headings = () => unneeded().locator('details > summary h2').allTextContents();

  test('stand in one fold at the end, and come out when the way of fastening needs them', async () => {
    await open();
    await page.getByRole('button', { name: 'The whole job' }).click();
    await expect.poll(headings).toEqual(['Felt', 'Adhesive', 'Nails']);
    await page.locator('summary', { hasText: 'Products' }).click();
    await page.locator('[id="add-job.floors"]').click();
    await field('job.floors.0.fastening').focus();
    await field('job.floors.0.fastening').selectOption('glued');
    expect(await headings()).toEqual(['Felt', 'Nails']);
    // Where the keys go stays where it was.
    expect(await focusedId()).toBe('field-job.floors.0.fastening');
    expect(await page.locator('#job-form > details > summary', { hasText: 'Adhesive' }).count()).toBe(1);
    await field('job.floors.0.fastening').selectOption('nailed');
    expect(await headings()).toEqual(['Adhesive']);
  });

  test('what is typed in one of them stays in view', async () => {
    await open();
    await page.getByRole('button', { name: 'The whole job' }).click();
    await unneeded().locator('> summary').click();
    await unneeded()
      .locator('details > summary', { hasText: /^Adhesive/ })
      .click();
    await field('job.adhesive.name').fill('Wood glue');
    expect(await field('job.adhesive.name').inputValue()).toBe('Wood glue');
    await page.locator('summary', { hasText: 'Products' }).click();
    await page.locator('[id="add-job.floors"]').click();
    expect(await headings()).toEqual(['Felt', 'Nails']);
  });
});
