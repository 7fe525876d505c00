/**
 * The pocket sheet's script, as text: remembers ticks and readings where the viewer lets it, writes them out and reads them back.
 * It carries no words and no data: those stand in the page. Its hash stands in `csp.ts`; a test compares it.
 */

export const POCKET_SCRIPT = `
(function () {
  'use strict';
  var root = document.documentElement, page = document.body.dataset, store = null;
  var at = function (id) { return document.getElementById(id); };
  var all = function (rule) { return Array.prototype.slice.call(document.querySelectorAll(rule)); };
  root.classList.add('script');
  try {
    window.localStorage.setItem(page.store + ' probe', '1');
    window.localStorage.removeItem(page.store + ' probe');
    store = window.localStorage;
  } catch (error) { store = null; }
  var boxes = all('input[data-step]'), fields = all('input[data-field]'), red = at('night-red');
  var state = { ticks: {}, fields: {}, red: false };
  if (store) {
    try {
      var kept = JSON.parse(store.getItem(page.store) || '{}');
      state.ticks = kept.ticks || {}; state.fields = kept.fields || {}; state.red = kept.red === true;
    } catch (error) { state = { ticks: {}, fields: {}, red: false }; }
    at('memory').textContent = page.remembers;
  }
  var keep = function () {
    if (!store) return;
    try { store.setItem(page.store, JSON.stringify(state)); } catch (error) { at('memory').textContent = page.forgets; }
  };
  var name = function (field) { return field.dataset.night + ' ' + field.dataset.moment + ' ' + field.dataset.field; };
  var count = function () {
    var done = boxes.filter(function (box) { return box.checked; }).length;
    at('count').textContent = page.done.replace('{done}', done).replace('{all}', boxes.length);
  };
  var show = function () {
    boxes.forEach(function (box) {
      var tick = state.ticks[box.dataset.step];
      if (tick) box.checked = tick[0] === 1;
    });
    fields.forEach(function (field) {
      if (state.fields[name(field)] !== undefined) field.value = state.fields[name(field)];
    });
    red.checked = state.red;
    root.classList.toggle('red', state.red);
    count();
  };
  var seconds = function () { return Math.floor(Date.now() / 1000); };
  boxes.forEach(function (box) {
    box.addEventListener('change', function () {
      state.ticks[box.dataset.step] = [box.checked ? 1 : 0, seconds()];
      keep(); count();
    });
  });
  var two = function (value) { return (value < 10 ? '0' : '') + value; };
  fields.forEach(function (field) {
    field.addEventListener('change', function () {
      state.fields[name(field)] = field.value;
      var clock = fields.filter(function (other) {
        return other.dataset.night === field.dataset.night && other.dataset.moment === field.dataset.moment && other.dataset.field === 'clock';
      })[0];
      if (clock && clock !== field && clock.value === '') {
        var now = new Date();
        clock.value = two(now.getHours()) + ':' + two(now.getMinutes());
        state.fields[name(clock)] = clock.value;
      }
      keep();
    });
  });
  red.addEventListener('change', function () {
    state.red = red.checked;
    root.classList.toggle('red', state.red);
    keep();
  });
  var write = function () {
    var lines = ['kipstow-pocket 1', 'trip ' + page.trip];
    boxes.forEach(function (box) {
      var tick = state.ticks[box.dataset.step];
      if (tick) lines.push((tick[0] === 1 ? 'tick ' : 'untick ') + encodeURIComponent(box.dataset.step) + ' ' + tick[1]);
    });
    var rows = {}, order = [];
    fields.forEach(function (field) {
      var row = field.dataset.night + ' ' + field.dataset.moment;
      if (!rows[row]) { rows[row] = { clock: '', parts: [] }; order.push(row); }
      if (field.dataset.field === 'clock') {
        var said = /^([01]?[0-9]|2[0-3])[:.h]?([0-5][0-9])$/.exec(field.value.trim());
        rows[row].clock = said ? two(parseInt(said[1], 10)) + ':' + said[2] : '';
        return;
      }
      var value = parseFloat(field.value.replace(',', '.'));
      if (!isFinite(value)) return;
      var plain = value * parseFloat(field.dataset.scale) + parseFloat(field.dataset.offset);
      rows[row].parts.push(field.dataset.field + '=' + String(+plain.toFixed(4)));
    });
    order.forEach(function (row) {
      if (rows[row].parts.length > 0) lines.push('read ' + row + ' ' + (rows[row].clock || '00:00') + ' ' + rows[row].parts.join(' '));
    });
    lines.push('end ' + (lines.length - 2));
    return lines.join('\\n');
  };
  var talk = at('talk'), said = at('said');
  at('export').addEventListener('click', function () {
    talk.value = write();
    talk.select();
    said.textContent = page.byhand;
    try {
      navigator.clipboard.writeText(talk.value).then(function () { said.textContent = page.copied; }, function () {});
    } catch (error) { said.textContent = page.byhand; }
  });
  at('import').addEventListener('click', function () {
    var lines = talk.value.split(/\\r?\\n/).map(function (line) { return line.replace(/^[>\\s]+/, '').trim(); }).filter(Boolean);
    if (lines[0] !== 'kipstow-pocket 1' || lines[1] !== 'trip ' + page.trip) { said.textContent = page.not; return; }
    var read = 0;
    lines.slice(2).forEach(function (line) {
      var parts = line.split(/\\s+/);
      if ((parts[0] === 'tick' || parts[0] === 'untick') && parts.length === 3) {
        try { state.ticks[decodeURIComponent(parts[1])] = [parts[0] === 'tick' ? 1 : 0, parseInt(parts[2], 10) || 0]; read += 1; } catch (error) { return; }
      }
      if (parts[0] === 'read' && parts.length > 4) {
        read += 1;
        fields.forEach(function (field) {
          if (field.dataset.night !== parts[1] || field.dataset.moment !== parts[2]) return;
          if (field.dataset.field === 'clock') { state.fields[name(field)] = parts[3]; return; }
          parts.slice(4).forEach(function (pair) {
            var half = pair.split('='), value = parseFloat(half[1]);
            if (half[0] !== field.dataset.field || !isFinite(value)) return;
            state.fields[name(field)] = String(+((value - parseFloat(field.dataset.offset)) / parseFloat(field.dataset.scale)).toFixed(3));
          });
        });
      }
    });
    keep(); show();
    said.textContent = page.imported.replace('{count}', read);
  });
  show();
})();
`
