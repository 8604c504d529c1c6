namespace FermentWatch.Kitchen.Members;

/// <summary>Whoever enters or makes something: known by the account, and written down with the name of that day.</summary>
/// <param name="Name">The name the household uses.</param>
/// <param name="AccountId">The account; null for a guest, a button, the command line, and where it was not noted.</param>
public readonly record struct Person(string Name, Guid? AccountId = null)
{
    /// <summary>Whether an entry is this person's own: whoever has no account has none, and a name that is given again is another's.</summary>
    public bool Is(Guid? accountId) => AccountId is not null && AccountId == accountId;
}
