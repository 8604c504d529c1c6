using FermentWatch.Intake.Credentials;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Storage.Records;
using Microsoft.AspNetCore.Identity;

namespace FermentWatch.Service.Accounts;

/// <summary>Signs people in and out, for the pages and the API.</summary>
public sealed partial class SignInDesk(UserManager<Account> accounts, SignIns signIns, PasswordGuard guard, IHttpContextAccessor http, ILogger<SignInDesk> logger)
{
    /// <summary>Signs in with a cookie; null when it went well, else why not. It never tells whether it was the name or the password.</summary>
    /// <param name="form">Name and password.</param>
    /// <param name="stay">Whether the sign-in outlives the browser's session.</param>
    public async Task<SignInTrouble?> SignInAsync(SignInForm form, bool stay)
    {
        string name = (form.User ?? "").Trim();
        string from = http.HttpContext?.Connection.RemoteIpAddress?.ToString() ?? "nowhere";
        Account? account = name.Length is 0 or > SafeText.LongestName ? null : await accounts.FindByNameAsync(name);
        switch (await guard.TryAsync(accounts, account, name, form.Password, from, http.HttpContext?.RequestAborted ?? default))
        {
            case PasswordAnswer.Right:
                await signIns.BeginAsync(account!, stay);
                SaySignedIn(logger, SafeText.ForLog(name), from);
                return null;
            case PasswordAnswer.TooMany:
                return new("Too many tries are waiting. Wait a quarter of a minute, then try again.", StatusCodes.Status429TooManyRequests);
            default:
                return new("This name and this password do not belong together. Try again; on the machine itself, 'fermentwatch member password' sets a new one.", StatusCodes.Status401Unauthorized);
        }
    }

    public Task SignOutAsync() => signIns.EndAsync(http.HttpContext!.User);

    [LoggerMessage(4003, LogLevel.Information, "{Name} signed in from {Address}")]
    private static partial void SaySignedIn(ILogger logger, string name, string address);
}

/// <summary>Why somebody did not get in.</summary>
/// <param name="Words">What to say.</param>
/// <param name="Status">The status for scripts.</param>
public sealed record SignInTrouble(string Words, int Status);
