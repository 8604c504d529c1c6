namespace FermentWatch.Kinetics;

/// <summary>
/// Why an input was not taken: which field, what came, and what would be right. Expected trouble, therefore a value
/// that pages, commands and API answers can show; every refusal of one input is returned at once.
/// </summary>
/// <param name="Field">The field in plain words, for example <c>salt</c>.</param>
/// <param name="Came">What was given, with its unit.</param>
/// <param name="WouldBeRight">What would be taken instead, with its unit and range.</param>
public sealed record Refusal(string Field, string Came, string WouldBeRight)
{
    /// <summary>One line: field, what came, what would be right.</summary>
    public override string ToString() => $"{Field}: {Came} cannot be used; {WouldBeRight}";
}
