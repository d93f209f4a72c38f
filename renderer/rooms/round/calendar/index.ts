export { CalendarView } from './calendar-view.tsx';
