using System.Globalization;
using System.Text;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Produce;

namespace FermentWatch.Calibration;

/// <summary>The fitted model as the source text that the product is built with.</summary>
internal static class CodeText
{
    public static string Of(ModelParameters model)
    {
        var text = new StringBuilder();
        text.Append("namespace FermentWatch.Kinetics.Guilds;\n\n");
        text.Append("/// <summary>The calibrated values, as the calibration prints them (--code); not edited by hand.</summary>\n");
        text.Append("internal static class CalibratedParameters\n{\n");
        text.Append("    public static ModelParameters Values { get; } = new()\n    {\n        Guilds =\n        [\n");
        foreach (Guild g in model.Guilds)
        {
            text.Append(CultureInfo.InvariantCulture, $"            new(\"{g.Name}\", {N(g.OptimumRatePerHour)}, new({N(g.Temperature.Minimum)}, "
                + $"{N(g.Temperature.Optimum)}, {N(g.Temperature.Maximum)}), {N(g.SaltChill)}, {N(g.HalfPh)}, {N(g.HalfAcidMolesPerLitre)},\n");
            text.Append(CultureInfo.InvariantCulture, $"                {N(g.SaltLimitPercent)}, {N(g.GrowthHexose)}, "
                + $"{N(g.MaintenanceHexosePerHour)}, {N(g.LacticYield)}, {N(g.AceticYield)}),\n");
        }
        text.Append("        ],\n        FirstCounts =\n        [\n");
        foreach (FirstCounts c in model.FirstCounts)
            text.Append(CultureInfo.InvariantCulture,
                $"            new({N(c.Starters)}, {N(c.ColdStarters)}, {N(c.Finishers)}, {N(c.ColdFinishers)}),\n");
        text.Append("        ],\n");
        Line("Lag", model.Lag);
        Line("PhSteepness", model.PhSteepness);
        Line("HalfHexose", model.HalfHexose);
        Line("LacticLimit", model.LacticLimit);
        Line("AceticWeight", model.AceticWeight);
        Line("SaltPower", model.SaltPower);
        Line("LowSaltPercent", model.LowSaltPercent);
        Lines("Rooms", model.Rooms);
        Lines("ExchangePerHour", model.ExchangePerHour);
        Lines("DrawnJuice", model.DrawnJuice);
        text.Append("    };\n}\n\n// StrongIonShare of the entries in Produce/Catalogue\n");
        foreach (Vegetable vegetable in Vegetable.All)
            text.Append(CultureInfo.InvariantCulture, $"// {vegetable}: {N(model.StrongIonShareOf(vegetable))}\n");
        return text.ToString();

        void Line(string name, double value) => text.Append(CultureInfo.InvariantCulture, $"        {name} = {N(value)},\n");
        void Lines(string name, IEnumerable<double> values) =>
            text.Append(CultureInfo.InvariantCulture, $"        {name} = [{string.Join(", ", values.Select(N))}],\n");
    }

    private static string N(double value) => double.Parse(value.ToString("G4", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
        .ToString("R", CultureInfo.InvariantCulture);
}
