using System.Collections.Concurrent;

namespace FermentWatch.Service.Pages.Entering;

/// <summary>
/// Lets a form act once, however often it is sent: a wet finger taps twice. Forms carry an id made when they were shown; the
/// last <see cref="Remembered"/> of them are remembered with what came of them. Over a restart of the service nothing is.
/// </summary>
/// <typeparam name="T">What comes of it.</typeparam>
public sealed class OncePerForm<T>
{
    private const int Remembered = 256;
    private readonly ConcurrentDictionary<Guid, Lazy<Task<T>>> _done = [];
    private readonly ConcurrentQueue<Guid> _order = [];

    /// <summary>Does it, or gives what came of it before. What failed by an exception may be tried again.</summary>
    public async Task<T> DoAsync(Guid form, Func<Task<T>> act)
    {
        Lazy<Task<T>> once = _done.GetOrAdd(form, _ => new Lazy<Task<T>>(act));
        try
        {
            T result = await once.Value;
            Remember(form);
            return result;
        }
        catch
        {
            _done.TryRemove(form, out _);
            throw;
        }
    }

    /// <summary>Forgets a form, so that it may act when it is sent again: nothing came of it.</summary>
    public void Forget(Guid form) => _done.TryRemove(form, out _);

    private void Remember(Guid form)
    {
        _order.Enqueue(form);
        while (_order.Count > Remembered && _order.TryDequeue(out Guid oldest))
            _done.TryRemove(oldest, out _);
    }
}
