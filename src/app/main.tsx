import { render } from 'preact';

function Page() {
  return (
    <main>
      <h1>Faintwave</h1>
    </main>
  );
}

render(<Page />, document.getElementById('app')!);
