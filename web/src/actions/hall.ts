import type { Action } from './action';

const action: Action = {
  name: 'Open the hall to a tablet or to screens, or shut it',
  perform: (doing) => doing.openHall(),
};

export default action;
