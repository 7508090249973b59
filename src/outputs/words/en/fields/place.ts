import type { TextsOf } from './texts-of.ts';

export const placeFields: TextsOf<'place'> = {
  'place.name': { label: 'Name' },
  'place.notes': { label: 'Notes' },
  'place.environment': { label: 'Surroundings', help: 'Man-made noise comes with neighbours.' },
  'place.localNoise': { label: 'Local noise', help: 'As measured at the site in 2.7 kHz, if worse than usual.' },
  'place.sunspots': { label: 'Sunspot number', help: 'Smoothed over twelve months, for the sky wave; 50 if left out.' },
};

export const stationFields: TextsOf<'station'> = {
  'station.fieldStrength': {
    label: 'Field strength',
    help: 'As measured or read from a map; it wins over power and distance.',
  },
  'station.name': { label: 'Name' },
  'station.frequency': { label: 'Frequency' },
  'station.power': { label: 'Power', help: 'Of the transmitter.' },
  'station.distance': { label: 'Distance' },
  'station.bearing': { label: 'Bearing', help: 'From you, clockwise from north.' },
  'station.mastGain': { label: 'Mast gain', help: 'Over a short mast, toward you, losses included; 0 if unknown.' },
  'station.mastHeight': { label: 'Mast height' },
  'station.modulation': { label: 'Modulation', help: 'Usual depth on peaks of programme.' },
  'station.programme': { label: 'Programme' },
  'station.hours': { label: 'Hours', help: 'When it is on the air, in UTC, as "06:00-22:00".' },
  'station.sections': {
    label: 'Land and sea on the way',
    help: 'From the transmitter to you, where you know better than the map; stretched to the distance.',
  },
  'station.list': { label: 'Stations' },
};

export const positionFields: TextsOf<'position'> = {
  'position.latitude': {
    label: 'Latitude',
    help: 'North as “51.2 N”, “51°12′N” or “51.2°”; south as “33.9 S” or “-33.9°”.',
  },
  'position.longitude': {
    label: 'Longitude',
    help: 'East as “12.5 E” or “12.5°”; west as “4.5 W”, “4°30′W” or “-4.5°”.',
  },
  'position.part': { label: 'Position' },
};

export const groundFields: TextsOf<'ground'> = {
  'ground.kind': { label: 'Ground', help: 'What lies between the transmitters and you.' },
  'ground.conductivity': { label: 'Conductivity' },
  'ground.permittivity': { label: 'Permittivity' },
  'ground.part': { label: 'Ground' },
};

export const sectionFields: TextsOf<'section'> = {
  'section.length': { label: 'Length' },
};

export const listeningFields: TextsOf<'listening'> = {
  'listening.time': { label: 'Time of day', help: 'What page and commands begin with; day if left out.' },
  'listening.month': { label: 'Month', help: 'In its middle; the sun at the middle of each path decides.' },
  'listening.hour': { label: 'Hour', help: 'UTC, such as 21.5 for half past nine in the evening.' },
  'listening.part': { label: 'Listening' },
};

export const earFields: TextsOf<'ear'> = {
  'ear.room': { label: 'Listening in' },
};
