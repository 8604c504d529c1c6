using FermentWatch.Acts;
using FermentWatch.Acts.Members;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Web.Accounts;

/// <summary>Signs people in and out, for the pages and the API.</summary>
[OpenToChildren]
public sealed partial class SignInDesk(AccountReader accounts, SignIns signIns, PasswordGuard guard, IHttpContextAccessor http,
    ILogger<SignInDesk> logger)
{
    /// <summary>Signs in with a cookie; null when it went well, else why not. It never tells whether it was the name or the password.</summary>
    /// <param name="form">Name and password.</param>
    /// <param name="stay">Whether the sign-in outlives the browser's session.</param>
    public async Task<SignInTrouble?> SignInAsync(SignInForm form, bool stay)
    {
        string name = (form.User ?? "").Trim();
        string from = http.HttpContext?.Connection.RemoteIpAddress?.ToString() ?? "nowhere";
        PasswordTry tried = await guard.TryAsync(accounts, name, form.Password, from, http.HttpContext?.RequestAborted ?? default);
        switch (tried.Answer)
        {
            case PasswordAnswer.Right:
                await signIns.BeginAsync(http.HttpContext!, tried.Account!, stay);
                SaySignedIn(logger, SafeText.ForLog(name), from);
                return null;
            case PasswordAnswer.TooMany:
                return new("Too many tries are waiting. Wait a quarter of a minute, then try again.", StatusCodes.Status429TooManyRequests);
            default:
                return new("This name and this password do not belong together. Try again; on the machine itself, 'fermentwatch member password' "
                    + "sets a new one.", StatusCodes.Status401Unauthorized);
        }
    }

    public Task SignOutAsync() => signIns.EndAsync(http.HttpContext!);

    [LoggerMessage(4003, LogLevel.Information, "{Name} signed in from {Address}")]
    private static partial void SaySignedIn(ILogger logger, string name, string address);
}

/// <summary>Why somebody did not get in.</summary>
/// <param name="Words">What to say.</param>
/// <param name="Status">The status for scripts.</param>
public sealed record SignInTrouble(string Words, int Status);

/// <summary>Name and password, as typed.</summary>
public sealed class SignInForm
{
    public string? User { get; set; }

    public string? Password { get; set; }
}
