// Says on the page when the program cannot start. Browsers that are too old for the program must be able to read this:
// nothing here is newer than the arrow functions that the minifier makes. Functions are values of variables because the
// minifier puts declared ones in an order of chance, and two builds would differ.
(function () {
  // The language that this device chose, or the first of the browser's that the program speaks: as `web/src/language.rs` finds it.
  var tags = [];
  try {
    tags.push(JSON.parse(localStorage.getItem('hatwright.settings')).language);
  } catch (nothing) {
    // Nothing was chosen on this device, or it keeps nothing.
  }
  tags = tags.concat(navigator.languages || [navigator.language]);
  var spoken = tags.map(function (tag) {
    return String(tag).toLowerCase().split(/[-_]/)[0];
  }).filter(function (tag) {
    return tag === 'en' || tag === 'es';
  })[0] || 'en';

  var WORDS = {
    en: {
      needs: ' It needs JavaScript and WebAssembly: Chrome or Edge 104, Firefox 102 or Safari 16.4, or anything newer.',
      stopped: 'Hatwright could not start: a part of it did not load, or this browser cannot run it. Reload the page to try again.',
      slow: 'Hatwright is still loading. If nothing changes, reload the page.',
      file: 'Hatwright cannot run from a file: open it through a web server.',
      old: 'This browser is too old for Hatwright.'
    },
    es: {
      needs: ' Necesita JavaScript y WebAssembly: Chrome o Edge 104, Firefox 102 o Safari 16.4, o cualquiera más nuevo.',
      stopped: 'Hatwright no ha podido arrancar: una parte no se ha cargado o este navegador no puede ejecutarlo. Recarga la página para intentarlo de nuevo.',
      slow: 'Hatwright se está cargando todavía. Si nada cambia, recarga la página.',
      file: 'Hatwright no funciona desde un archivo: ábrelo a través de un servidor web.',
      old: 'Este navegador es demasiado antiguo para Hatwright.'
    }
  }[spoken];
  var root = document.documentElement;
  var started = false;
  var failed = false;
  var sentence = '';

  root.lang = spoken;

  var show = function () {
    var place = document.getElementById('trouble');
    if (place) {
      place.textContent = sentence;
      root.classList.toggle('stuck', failed);
    }
  };

  var fail = function (reason) {
    if (!started && !failed) {
      failed = true;
      sentence = reason + WORDS.needs;
      show();
    }
  };

  var stopped = function () {
    fail(WORDS.stopped);
  };

  root.classList.add('scripted');
  addEventListener('TrunkApplicationStarted', function () {
    started = true;
    failed = false;
    sentence = '';
    show();
  });
  addEventListener('unhandledrejection', stopped);
  // A script that does not load reports to its own element, hence the capturing; a missing picture stops nothing.
  addEventListener('error', function (event) {
    if (event.target === window || event.target.tagName === 'SCRIPT') {
      stopped();
    }
  }, true);
  // What went wrong before the place for the sentence was there.
  document.addEventListener('DOMContentLoaded', show);
  addEventListener('load', function () {
    setTimeout(function () {
      if (!started && !failed) {
        sentence = WORDS.slow + WORDS.needs;
        show();
      }
    }, 20000);
  });

  if (location.protocol === 'file:') {
    fail(WORDS.file);
  } else if (!('noModule' in document.createElement('script')) || typeof WebAssembly !== 'object') {
    fail(WORDS.old);
  }
})();
