import { charts } from './charts.js';

charts(document.getElementById('charts'), 0);
