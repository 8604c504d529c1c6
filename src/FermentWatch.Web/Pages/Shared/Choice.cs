namespace FermentWatch.Web.Pages.Shared;

/// <summary>One of several to choose from.</summary>
/// <param name="Value">What the form sends.</param>
/// <param name="Label">What the person reads.</param>
public sealed record Choice(string Value, string Label);
