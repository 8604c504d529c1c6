using FermentWatch.Kinetics;

namespace FermentWatch.Kitchen.Typed;

/// <summary>
/// What a form showed when it was opened, which comes back with it: whoever saves later than somebody else is told what changed meanwhile,
/// and takes no change away unseen.
/// </summary>
public static class Shown
{
    private const char Line = '\n', Between = '\t';

    /// <summary>As a form carries it.</summary>
    public static string Write(IEnumerable<(string Field, string Value)> facts) =>
        string.Join(Line, facts.Select(fact => $"{fact.Field}{Between}{fact.Value}"));

    /// <summary>What stands otherwise now than the form showed; null where nothing does, and for a form that carries nothing, such as a
    /// script's.</summary>
    /// <param name="what">What the form is about.</param>
    /// <param name="shown">What it carries.</param>
    /// <param name="now">What stands.</param>
    public static Refusal? Check(string what, string? shown, IEnumerable<(string Field, string Value)> now)
    {
        var before = (shown ?? "").ReplaceLineEndings($"{Line}").Split(Line).Select(line => line.Split(Between)).Where(parts => parts.Length == 2)
            .DistinctBy(parts => parts[0]).ToDictionary(parts => parts[0], parts => parts[1]);
        string[] changed = [.. now.Where(fact => before.TryGetValue(fact.Field, out string? value) && value != fact.Value)
            .Select(fact => $"{fact.Field} {fact.Value} (this form was opened with {before[fact.Field]})")];
        return changed.Length == 0 ? null : new Refusal(what, "a form older than the record",
            $"somebody else saved meanwhile: {string.Join("; ", changed)}. Save again to have it as it stands here");
    }
}
