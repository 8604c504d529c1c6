using FermentWatch.Kinetics;

namespace FermentWatch.Web.Pages.Shared;

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
