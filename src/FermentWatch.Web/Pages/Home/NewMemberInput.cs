namespace FermentWatch.Web.Pages.Home;

/// <summary>Somebody new, as typed.</summary>
public sealed class NewMemberInput
{
    public string? Name { get; set; }

    /// <summary><c>Adult</c> or <c>Child</c>.</summary>
    public string? Role { get; set; }

    public string? Password { get; set; }
}
