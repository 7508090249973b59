import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { OpenSet } from './open-sets.ts';
import type { Places } from './shelf/kept-places.ts';
import type { Shelf } from './shelf/shelf.ts';

/** The open set that the components inside are about; the page gives one around them all. */
export const SetContext = createContext(undefined as unknown as OpenSet);

/** The open set that this component is about. */
export const useOpenSet = (): OpenSet => useContext(SetContext);

/** The shelf of the page. */
export const ShelfContext = createContext(undefined as unknown as Shelf);

export const useShelf = (): Shelf => useContext(ShelfContext);

/** The kept places of the page. */
export const PlacesContext = createContext(undefined as unknown as Places);

export const usePlaces = (): Places => useContext(PlacesContext);
