using System.Globalization;

namespace FermentWatch.Web.Pages.Shared;

/// <summary>Reads what an address says behind its question mark. Addresses are typed, shortened and made up: what is none counts as left
/// out.</summary>
internal static class Query
{
    /// <summary>A whole number of 0 or more.</summary>
    public static int? Number(string? text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : null;

    /// <summary>The id of an entry.</summary>
    public static Guid? Id(string? text) => Guid.TryParse(text, out Guid id) ? id : null;
}
