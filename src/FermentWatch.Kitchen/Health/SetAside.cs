using System.Collections.Concurrent;
using NodaTime;

namespace FermentWatch.Kitchen.Health;

/// <summary>One thing that a pass could not digest: it stays as it is, and the rest goes on.</summary>
/// <param name="Pass">Which pass met it.</param>
/// <param name="What">The thing, as a person knows it: <c>jar 7</c>.</param>
/// <param name="Reason">Why, in one line.</param>
/// <param name="Since">When it was set aside first.</param>
/// <param name="Times">How often it was tried since.</param>
public sealed record SetAsideItem(string Pass, string What, string Reason, Instant Since, long Times);

/// <summary>
/// What passes set aside, by pass, as of the last time each ran to its end. Kept in memory: every pass meets its own again.
/// </summary>
/// <param name="clock">The clock.</param>
public sealed class SetAside(IClock clock)
{
    private readonly ConcurrentDictionary<string, IReadOnlyList<SetAsideItem>> _byPass = [];

    /// <summary>Raised once for each thing that was not set aside before, with what it threw.</summary>
    public event Action<SetAsideItem, Exception>? Added;

    /// <summary>Raised after each step of a pass, with the pass's name: a long pass lives as long as it goes on.</summary>
    public event Action<string>? Stepped;

    /// <summary>Everything that is set aside now.</summary>
    public IReadOnlyList<SetAsideItem> Items =>
        [.. _byPass.Values.SelectMany(items => items).OrderBy(item => item.Pass, StringComparer.Ordinal).ThenBy(item =>
            item.What, StringComparer.Ordinal)];

    /// <summary>Begins one run of a pass; what it sets aside takes the place of what its last run did when it is disposed of.</summary>
    public SetAsideRun Begin(string pass) => new(this, pass);

    /// <summary>One run of a pass.</summary>
    public sealed class SetAsideRun(SetAside all, string pass) : IDisposable
    {
        private readonly Dictionary<string, SetAsideItem> _items = [];

        /// <summary>Does one step for one thing. False if that threw: it is set aside then.</summary>
        public bool Try(string what, Action step)
        {
            try
            {
                step();
                return true;
            }
            catch (Exception bug) when (IsOfTheThing(bug))
            {
                Add(what, bug);
                return false;
            }
            finally
            {
                all.Stepped?.Invoke(pass);
            }
        }

        /// <inheritdoc cref="Try"/>
        public async Task<bool> TryAsync(string what, Func<Task> step)
        {
            try
            {
                await step();
                return true;
            }
            catch (Exception bug) when (IsOfTheThing(bug))
            {
                Add(what, bug);
                return false;
            }
            finally
            {
                all.Stepped?.Invoke(pass);
            }
        }

        public void Dispose() => all._byPass[pass] = [.. _items.Values];

        private void Add(string what, Exception bug)
        {
            SetAsideItem? before = all._byPass.GetValueOrDefault(pass)?.FirstOrDefault(item => item.What == what);
            _items[what] = new SetAsideItem(pass, what, bug.Message.ReplaceLineEndings(" "), before?.Since ?? all.Now, (before?.Times ?? 0) + 1);
            if (before is null)
                all.Added?.Invoke(_items[what], bug);
        }
    }

    /// <summary>A stop, a full disk or a database that is away is nobody's row: the whole pass fails then and is tried again.</summary>
    internal static bool IsOfTheThing(Exception bug) =>
        bug is not (OperationCanceledException or IOException or System.Data.Common.DbException or OutOfMemoryException);

    private Instant Now => clock.GetCurrentInstant();
}
