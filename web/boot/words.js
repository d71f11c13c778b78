// The first screen in Spanish, where that is spoken. Read by old browsers, too: see watch.js.
(function () {
  var WORDS = {
    'From a head and a crochet swatch to a hat that fits: every round, every stitch, every ball of yarn.':
      'De una cabeza y una muestra de ganchillo a un gorro a medida: cada vuelta, cada punto, cada ovillo.',
    'Hats': 'Gorros',
    'Copy link': 'Copiar enlace',
    'Print': 'Imprimir',
    'stitches around': 'puntos alrededor',
    'rounds above the band': 'vueltas sobre la banda',
    'of yarn in two colours': 'de hilo en dos colores',
    'Setting up your workbench …': 'Preparando tu mesa de trabajo …',
    'Head': 'Cabeza',
    'How is the head known?': '¿Qué se sabe de la cabeza?',
    'Age': 'Edad',
    'Counted in': 'Contada en',
    'Swatch': 'Muestra',
    'Stitches': 'Puntos',
    'Rounds': 'Vueltas',
    'Hat': 'Gorro',
    'Band': 'Banda',
    'Folded up': 'Doblado',
    'Colours': 'Colores',
    'Round by round': 'Vuelta a vuelta'
  };
  var app = document.getElementById('app');
  // watch.js has found out what is spoken.
  if (document.documentElement.lang !== 'es' || !app) {
    return;
  }
  var texts = document.createTreeWalker(app, NodeFilter.SHOW_TEXT, null, false);
  while (texts.nextNode()) {
    var text = texts.currentNode;
    text.data = WORDS[text.data.trim()] || text.data;
  }
})();
