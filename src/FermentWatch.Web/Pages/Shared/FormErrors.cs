using FermentWatch.Kinetics;

namespace FermentWatch.Web.Pages.Shared;

/// <summary>What was wrong with a form, found again by field.</summary>
/// <param name="All">Every refusal.</param>
public sealed record FormErrors(IReadOnlyList<Refusal> All)
{
    public static FormErrors None { get; } = new([]);

    public bool Any => All.Count > 0;

    /// <summary>What was wrong with a field, or null.</summary>
    public Refusal? Of(string field) => All.FirstOrDefault(refusal => refusal.Field == field);

    /// <summary>Whether one of these fields was wrong.</summary>
    public bool AnyOf(params string[] fields) => All.Any(refusal => fields.Contains(refusal.Field));

    /// <summary>The id of a field's element in a page.</summary>
    public static string IdOf(string field) => "f-" + field.Replace(' ', '-');
}

/// <summary>Ids of what stands around a control.</summary>
internal static class FieldParts
{
    /// <summary>The ids of hint and error, for <c>aria-describedby</c>; null where there is neither.</summary>
    public static string? DescribedBy(string field, string? hint, Refusal? wrong)
    {
        string id = FormErrors.IdOf(field);
        string both = string.Join(' ', new[] { hint is null ? null : $"{id}-hint", wrong is null ? null : $"{id}-wrong" }.OfType<string>());
        return both.Length == 0 ? null : both;
    }
}

/// <summary>One of several to choose from.</summary>
/// <param name="Value">What the form sends.</param>
/// <param name="Label">What the person reads.</param>
public sealed record Choice(string Value, string Label);
