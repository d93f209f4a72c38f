/** Words around the views of the room. */
export const roundWords = {
  room: {
    plan: 'Plan',
    when: 'When',
    calendar: 'Calendar',
    programmes: 'Programmes',
    season: 'Season',
    buy: 'Buy',
    fleets: 'Fleets',
    title: 'Round',
    lawnsByDay: 'Lawns by day',
    views: 'Views of the round',
    map: 'Map of the round',
    mapCaption: 'numbers: days',
  },
} as const;
