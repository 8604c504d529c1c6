using System.Text.RegularExpressions;
using FermentWatch.Web.Accounts;

namespace FermentWatch.Web.Pages.Shared;

/// <summary>What was typed on this page before somebody had to sign in again, for its fields to show.</summary>
public sealed partial class TypedBefore(KeptForms forms, IHttpContextAccessor http)
{
    /// <summary>The name in an address that leads back to a page with what was typed.</summary>
    public const string Query = "kept";

    /// <summary>Forms whose fields stand once on their page; what was typed into another is shown beside it.</summary>
    private static readonly string[] FilledIn = ["put-up", "ph", "correct", "move", "seen-other", "cold", "thrown-out", "recipe"];

    private readonly Lazy<KeptForm?> _form = new(() => http.HttpContext is { Request: { } request } context && HttpMethods.IsGet(request.Method)
        && context.User.Identity?.IsAuthenticated == true ? forms.Find(request.Query[Query]) : null);

    /// <summary>Whether a form came back.</summary>
    public bool Any => _form.Value is not null;

    /// <summary>Whether it came back filled in.</summary>
    public bool IsFilledIn => _form.Value is { } form && FilledIn.Contains(form.Form);

    /// <summary>What was typed into a field; null where nothing came back for it.</summary>
    public string? Of(string field) => IsFilledIn ? _form.Value!.Fields.GetValueOrDefault(field) : null;

    /// <summary>Whether a box was ticked; null where nothing came back.</summary>
    public bool? Ticked(string field) => IsFilledIn ? _form.Value!.Fields.ContainsKey(field) : null;

    /// <summary>What was typed into a form that cannot be filled in again, a line for each field.</summary>
    public IEnumerable<(string Field, string Typed)> Lines() => IsFilledIn ? []
        : _form.Value!.Fields.Where(each => each.Value.Length > 0 && !Guid.TryParse(each.Value, out _)).Select(each =>
            (Words(each.Key), each.Value));

    /// <summary><c>Input.HowMuch</c> as <c>How much</c>.</summary>
    private static string Words(string field)
    {
        string words = Capitals().Replace(field[(field.LastIndexOf('.') + 1)..], found => " " + found.Value.ToLowerInvariant());
        return words.Length == 0 ? field : char.ToUpperInvariant(words[0]) + words[1..];
    }

    [GeneratedRegex("(?<!^)[A-Z]")]
    private static partial Regex Capitals();
}
