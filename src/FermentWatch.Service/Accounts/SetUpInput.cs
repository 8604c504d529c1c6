using FermentWatch.Service.Pages.Home;

namespace FermentWatch.Service.Accounts;

/// <summary>What the owner types at first start.</summary>
public sealed class SetUpInput
{
    public string? User { get; set; }

    public string? Password { get; set; }

    public string? Again { get; set; }

    public HouseholdInput Household { get; set; } = new();
}
