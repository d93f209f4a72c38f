export { CALENDAR_KEYS, CalendarView } from './calendar-view.tsx';
