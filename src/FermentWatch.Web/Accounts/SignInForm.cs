namespace FermentWatch.Web.Accounts;

/// <summary>Name and password, as typed.</summary>
public sealed class SignInForm
{
    public string? User { get; set; }

    public string? Password { get; set; }
}
