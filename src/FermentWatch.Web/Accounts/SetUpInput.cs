using FermentWatch.Acts.Households;


namespace FermentWatch.Web.Accounts;

/// <summary>What the owner types at first start.</summary>
public sealed class SetUpInput
{
    public string? User { get; set; }

    public string? Password { get; set; }

    public string? Again { get; set; }

    public HouseholdInput Household { get; set; } = new();
}
