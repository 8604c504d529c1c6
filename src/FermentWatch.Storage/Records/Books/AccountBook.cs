using System.Security.Claims;
using System.Security.Cryptography;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IAccountBook"/>
/// <remarks>A role is a claim of the account; hashing, stamps and rules of passwords are ASP.NET Core Identity's.</remarks>
internal sealed class AccountBook(UserManager<Account> accounts, TimeProvider clock) : IAccountBook
{
    private const int NobodysPasswordLetters = 32;
    private static string? _nobodysHash;

    public Task<bool> AnybodyAsync(CancellationToken cancellationToken) =>
        accounts.Users.AnyAsync(account => account.PasswordHash != null, cancellationToken);

    public async Task<IReadOnlyList<KnownAccount>> AllAsync(CancellationToken cancellationToken)
    {
        var all = new List<KnownAccount>();
        foreach (Account account in await accounts.Users.OrderBy(account => account.NormalizedUserName).ToListAsync(cancellationToken))
            all.Add(await KnownAsync(account));
        return all;
    }

    public async Task<KnownAccount?> FindAsync(string name, CancellationToken cancellationToken) =>
        await accounts.FindByNameAsync(name) is { } account ? await KnownAsync(account) : null;

    public async Task<KnownAccount?> WithPasswordAsync(string name, string password, CancellationToken cancellationToken)
    {
        Account? account = await accounts.FindByNameAsync(name);
        var answer = accounts.PasswordHasher.VerifyHashedPassword(account!, account?.PasswordHash ?? NobodysHash(), password);
        return account?.PasswordHash is not null && password.Length > 0 && answer != PasswordVerificationResult.Failed ? await KnownAsync(account)
            : null;
    }

    public async Task<Refusal?> WrongPasswordAsync(string password)
    {
        var nobody = new Account { DisplayName = "" };
        foreach (IPasswordValidator<Account> validator in accounts.PasswordValidators)
            if (!(await validator.ValidateAsync(accounts, nobody, password)).Succeeded)
                return new Refusal("password", "this password",
                    $"at least {accounts.Options.Password.RequiredLength} letters or signs, 4 of them different, would be right");
        return null;
    }

    public async Task<IReadOnlyList<Refusal>> AddAsync(string name, MemberRole role, string password)
    {
        var account = new Account { Id = Guid.CreateVersion7(clock.GetUtcNow()), UserName = name, DisplayName = name };
        IdentityResult made = await accounts.CreateAsync(account, password);
        return Refusals(made.Succeeded ? await accounts.AddClaimAsync(account, RoleOf(role)) : made);
    }

    public async Task<IReadOnlyList<Refusal>> SetRoleAsync(KnownAccount account, MemberRole role)
    {
        Account row = await RowAsync(account);
        foreach (Claim before in (await accounts.GetClaimsAsync(row)).Where(claim => claim.Type == ClaimTypes.Role))
            await accounts.RemoveClaimAsync(row, before);
        return Refusals(await accounts.AddClaimAsync(row, RoleOf(role)));
    }

    public async Task<IReadOnlyList<Refusal>> SetPasswordAsync(KnownAccount account, string password)
    {
        Account row = await RowAsync(account);
        foreach (IPasswordValidator<Account> validator in accounts.PasswordValidators)
            if (Refusals(await validator.ValidateAsync(accounts, row, password)) is { Count: > 0 } refusals)
                return refusals;
        row.PasswordHash = accounts.PasswordHasher.HashPassword(row, password);
        row.LockoutEnd = null;
        row.AccessFailedCount = 0;
        // The stamp is saved together with the hash.
        return Refusals(await accounts.UpdateSecurityStampAsync(row));
    }

    public async Task<IReadOnlyList<Refusal>> RemoveAsync(KnownAccount account) => Refusals(await accounts.DeleteAsync(await RowAsync(account)));

    private async Task<Account> RowAsync(KnownAccount account) =>
        await accounts.FindByIdAsync(account.Id.ToString()) ?? throw new InvalidOperationException($"The account of {account.Name} is gone.");

    private async Task<KnownAccount> KnownAsync(Account account) => new(account.Id, account.UserName!,
        MemberBook.RoleOf((await accounts.GetClaimsAsync(account)).Where(claim => claim.Type == ClaimTypes.Role).Select(claim =>
            claim.Value).ToList()));

    private static Claim RoleOf(MemberRole role) => new(ClaimTypes.Role, role.ToString());

    /// <summary>A hash of the same cost that nobody knows a password for.</summary>
    private string NobodysHash() =>
        _nobodysHash ??= accounts.PasswordHasher.HashPassword(null!, RandomNumberGenerator.GetHexString(NobodysPasswordLetters));

    private static List<Refusal> Refusals(IdentityResult result) =>
        [.. result.Errors.Select(error =>
            new Refusal(error.Code.StartsWith("Password", StringComparison.Ordinal) ? "password" : "name", "what was given", error.Description))];
}
