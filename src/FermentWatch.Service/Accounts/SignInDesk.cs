using FermentWatch.Storage.Records;
using Microsoft.AspNetCore.Identity;

namespace FermentWatch.Service.Accounts;

/// <summary>Signs people in and out, for the pages and the API.</summary>
public sealed class SignInDesk(SignInManager<Account> signing)
{
    /// <summary>Signs in with a cookie; null when it went well, else why not. It never tells whether it was the name or the password.</summary>
    /// <param name="form">Name and password.</param>
    /// <param name="stay">Whether the sign-in outlives the browser's session.</param>
    public async Task<string?> SignInAsync(SignInForm form, bool stay)
    {
        SignInResult result = await signing.PasswordSignInAsync((form.User ?? "").Trim(), form.Password ?? "", stay, lockoutOnFailure: true);
        if (result.Succeeded)
            return null;
        return result.IsLockedOut
            ? "Too many wrong tries. Wait five minutes, then try again."
            : "This name and this password do not belong together. Try again; on the machine itself, 'fermentwatch member password' sets a new one.";
    }

    public Task SignOutAsync() => signing.SignOutAsync();
}
