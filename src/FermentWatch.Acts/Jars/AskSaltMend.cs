using FermentWatch.Kinetics;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Salts;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Jars;

/// <summary>What a jar that was salted wrongly needs. Writes nothing: what was done is put on record by <see cref="CorrectJar"/>.</summary>
public sealed class AskSaltMend(JarReader reader, TimeProvider clock)
{
    /// <summary>The answer; null where there is no such jar. Nothing is worked out of a form that is empty.</summary>
    public async Task<SaltMendAnswered?> ForAsync(int number, MendForm form, CancellationToken cancellationToken)
    {
        if (await reader.FindAsync(number, cancellationToken) is not { } view)
            return null;
        if (form.IsEmpty)
            return new SaltMendAnswered(view, null, null, []);
        (MendQuestion? question, IReadOnlyList<Refusal> refusals) = MendQuestion.Read(form, view.Jar, view.Household);
        if (question is null)
            return new SaltMendAnswered(view, null, null, refusals);
        SaltMend mend = SaltMend.For(view.Jar, question, view.Place, clock.GetUtcNow().ToInstant());
        return new SaltMendAnswered(view, mend, new MendWords(mend, view.Household, clock.GetUtcNow().ToInstant()), []);
    }
}

/// <summary>What a jar needs.</summary>
/// <param name="View">The jar as it stands.</param>
/// <param name="Mend">What was worked out; null where nothing was asked or something was wrong.</param>
/// <param name="Words">The same in words; null likewise.</param>
/// <param name="Refusals">What was wrong.</param>
public sealed record SaltMendAnswered(JarView View, SaltMend? Mend, MendWords? Words, IReadOnlyList<Refusal> Refusals)
{
    /// <summary>What the record of the jar becomes once it was done, by each of the ways: its words, and the fields of the correction.</summary>
    public IReadOnlyList<MendedRecord> Records => Mend is null ? [] : MendedRecord.Of(View.Jar, Mend, View.Household);
}
