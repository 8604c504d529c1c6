using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace FermentWatch.Storage.Records.Conversions;

/// <summary>Members of an enumeration by name; a name that this version does not know reads as the one that is given.</summary>
internal sealed class EnumNameConverter<T>(T unknown)
    : ValueConverter<T, string>(value => value.ToString(), stored => Read(stored, unknown))
    where T : struct, Enum
{
    private static T Read(string stored, T unknown) => Enum.TryParse(stored, out T value) && Enum.IsDefined(value) ? value : unknown;
}
