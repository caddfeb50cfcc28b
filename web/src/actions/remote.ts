import type { Action } from './action';

const action: Action = {
  name: 'Use this device as a remote for the hall',
  perform: () => location.assign('/hall?as=remote'),
};

export default action;
