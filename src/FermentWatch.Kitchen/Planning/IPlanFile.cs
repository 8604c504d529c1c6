using FermentWatch.Kitchen.Households;

namespace FermentWatch.Kitchen.Planning;

/// <summary>Writes a plan as a file that calendars read.</summary>
public interface IPlanFile
{
    /// <summary>Media type of the file.</summary>
    string MediaType { get; }

    /// <summary>Writes the file; the same plan gives the same bytes.</summary>
    string Of(Plan plan, Household household);
}
