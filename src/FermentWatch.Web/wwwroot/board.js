// The board of a shelf says what it will write; without script it says the same of what is ticked.
'use strict';

for (const board of document.querySelectorAll('form.board')) {
  const words = board.querySelector('.board-words');
  const say = () => {
    const ticked = [...board.querySelectorAll('[name="Input.Except"]:checked')].map(box => box.value);
    words.textContent = ticked.length === 0 ? 'All well' : `All well but ${ticked.join(', ')}`;
  };
  board.addEventListener('change', say);
  say();
}
