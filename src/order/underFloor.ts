/** What lies between the planks and the subfloor, by the way the planks are fastened. */
import type { FloorTerms, House, RollGoods } from './house';

export interface Covers {
  readonly underlay: RollGoods | null;
  readonly film: RollGoods | null;
  readonly felt: RollGoods | null;
}

/**
 * What is laid under a product, as far as its roll is filled in; what is said at the product comes first.
 *
 * Floating planks lie on underlay, over concrete on film too; film over a wood subfloor would shut its damp in. Glued
 * planks stick to the subfloor itself, and nothing lies between. Nailed planks lie on felt or paper: they would work
 * loose on foam.
 *
 * Sources: a table of vapour retarders by way of fastening in a trade association's magazine (Hardwood Floors, February
 * 2017, page 52): felt or paper under nailed planks, foam never; film and foam under floating ones. Glued: common
 * practice.
 */
export function coversUnder(house: House, terms: FloorTerms): Covers {
  const isFloating = terms.fastening === 'floating';
  const laysUnderlay = terms.underlay === 'laid' || (terms.underlay === '' && isFloating);
  const laysFilm = terms.film === 'yes' || (terms.film === '' && isFloating && house.site.subfloor !== 'wood');
  return {
    underlay: laysUnderlay ? house.underlay : null,
    film: laysFilm ? house.film : null,
    felt: wantsFelt(terms) ? house.felt : null,
  };
}

/** Whether felt or paper belongs under a product, its roll filled in or not. */
export function wantsFelt({ felt, fastening }: FloorTerms): boolean {
  return felt === 'yes' || (felt === '' && fastening === 'nailed');
}
