using System.Text.Json;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Recipes;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace FermentWatch.Storage.Records.Conversions;

/// <summary>What a recipe is made of, as JSON in its row. Choices stand by name, since their numbers may be put in another order.</summary>
internal sealed class MixtureConverter() : ValueConverter<Mixture, string>(mixture => Write(mixture), stored => Read(stored))
{
    /// <summary>A mixture is written anew and never changed, so the same one means the same.</summary>
    internal static readonly ValueComparer<Mixture> Comparer = new(
        (left, right) => ReferenceEquals(left, right), mixture => mixture.Vegetables.Count, mixture => mixture);

    private static string Write(Mixture mixture) => JsonSerializer.Serialize(new Row(mixture.Vegetables, mixture.Seasonings, mixture.WaterGrams,
        mixture.SaltPercent, mixture.SaltOf.ToString(), mixture.Sourness.ToString(), mixture.Cut.ToString(), mixture.Allergens, mixture.Note,
        mixture.VinegarGrams, mixture.VinegarPercent, mixture.StarterGrams),
        JsonSerializerOptions.Default);

    /// <summary>One without vegetables where the row cannot be read.</summary>
    private static Mixture Read(string stored)
    {
        Row row = StoredJson.Read<Row>(stored) ?? new Row([], [], 0, 0, "", "", "", [], "");
        return new Mixture
        {
            Vegetables = row.Vegetables ?? [], Seasonings = row.Seasonings ?? [], WaterGrams = row.WaterGrams, SaltPercent = row.SaltPercent,
            SaltOf = Named(row.SaltOf, SaltBasis.VegetablesAndWater), Sourness = Named(row.Sourness, Sourness.Sour), Cut = Named(row.Cut, Cut.Pieces),
            Allergens = row.Allergens ?? [], Note = row.Note ?? "", VinegarGrams = row.VinegarGrams ?? 0,
            VinegarPercent = row.VinegarPercent ?? Mixture.UsualVinegarPercent, StarterGrams = row.StarterGrams ?? 0,
        };
    }

    private static T Named<T>(string? name, T otherwise) where T : struct, Enum => Enum.TryParse(name, out T read) ? read : otherwise;

    /// <summary>What stands last is null in rows from before there was vinegar and brine in a recipe.</summary>
    private sealed record Row(IReadOnlyList<MixturePart>? Vegetables, IReadOnlyList<MixturePart>? Seasonings, double WaterGrams, double SaltPercent,
        string? SaltOf, string? Sourness, string? Cut, IReadOnlyList<string>? Allergens, string? Note,
        double? VinegarGrams = null, double? VinegarPercent = null, double? StarterGrams = null);
}
