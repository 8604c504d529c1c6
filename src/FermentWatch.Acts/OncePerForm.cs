using System.Collections.Concurrent;

namespace FermentWatch.Acts;

/// <summary>What came of a form.</summary>
/// <param name="Result">What came of it, now or when it was sent first.</param>
/// <param name="SaidSomethingElse">Whether it was sent before with other content: then nothing was done now.</param>
internal readonly record struct Once<T>(T Result, bool SaidSomethingElse);

/// <summary>
/// Lets a form act once, however often it is sent: a wet finger taps twice. Forms carry an id made when they were shown; the
/// last <see cref="Remembered"/> of them are remembered with their content and what came of them. A form that comes again with
/// other content does nothing: whoever sends it is asked. Over a restart of the service nothing is remembered.
/// </summary>
/// <typeparam name="T">What comes of it.</typeparam>
internal sealed class OncePerForm<T>
{
    private const int Remembered = 256;
    private readonly ConcurrentDictionary<Guid, (string Content, Lazy<Task<T>> Act)> _done = [];
    private readonly ConcurrentQueue<Guid> _order = [];

    /// <summary>Does it, or gives what came of it before. What came to nothing, or failed by an exception, may be tried again.</summary>
    /// <param name="form">Id of the form.</param>
    /// <param name="content">All that was typed, as one text.</param>
    /// <param name="isDone">Whether anything came of it.</param>
    /// <param name="act">What it does.</param>
    public async Task<Once<T>> DoAsync(Guid form, string content, Func<T, bool> isDone, Func<Task<T>> act)
    {
        (string Content, Lazy<Task<T>> Act) once = _done.GetOrAdd(form, _ => (content, new Lazy<Task<T>>(act)));
        try
        {
            T result = await once.Act.Value;
            if (!isDone(result))
            {
                _done.TryRemove(KeyValuePair.Create(form, once));
                return once.Content == content ? new Once<T>(result, false) : await DoAsync(form, content, isDone, act);
            }
            if (once.Content != content)
                return new Once<T>(result, true);
            Remember(form);
            return new Once<T>(result, false);
        }
        catch
        {
            _done.TryRemove(form, out _);
            throw;
        }
    }

    private void Remember(Guid form)
    {
        _order.Enqueue(form);
        while (_order.Count > Remembered && _order.TryDequeue(out Guid oldest))
            _done.TryRemove(oldest, out _);
    }
}
