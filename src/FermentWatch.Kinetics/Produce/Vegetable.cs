using System.Diagnostics.CodeAnalysis;

namespace FermentWatch.Kinetics.Produce;

/// <summary>A vegetable the model has figures for.</summary>
public sealed partial class Vegetable
{
    private int? _index;

    private Vegetable(string name, string[] aliases, Composition composition, double rawPh, double malic, double citric, FloraKind flora, double ignorance = 1)
    {
        Name = name;
        Aliases = aliases;
        Composition = composition;
        RawPh = rawPh;
        MalicMillimolesPerKilogram = malic;
        CitricMillimolesPerKilogram = citric;
        Flora = flora;
        Ignorance = ignorance;
    }

    /// <summary>The name it is asked for by, in lower case; also its identity in stored recipes.</summary>
    public string Name { get; }

    /// <summary>Other names it answers to.</summary>
    public IReadOnlyList<string> Aliases { get; }

    /// <summary>What 100 g of it hold.</summary>
    public Composition Composition { get; }

    /// <summary>pH of the raw vegetable.</summary>
    public double RawPh { get; }

    /// <summary>Malic acid, mmol per kg of vegetable.</summary>
    public double MalicMillimolesPerKilogram { get; }

    /// <summary>Citric acid, mmol per kg of vegetable.</summary>
    public double CitricMillimolesPerKilogram { get; }

    /// <summary>What lactic acid bacteria it brings along.</summary>
    public FloraKind Flora { get; }

    /// <summary>How many times wider than cabbage's the spread of its sugar, buffer and first counts is taken, for want of figures.</summary>
    internal double Ignorance { get; }

    /// <summary>Finds a vegetable by name or alias, whatever the case and the spaces around it.</summary>
    public static bool TryFind(string? name, [NotNullWhen(true)] out Vegetable? vegetable)
    {
        string wanted = string.Join(' ', (name ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
        vegetable = All.FirstOrDefault(each => Answers(each, wanted));
        return vegetable is not null;
    }

    /// <summary>Its place in the catalogue.</summary>
    internal int Index => _index ??= All.TakeWhile(each => each != this).Count();

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    private static bool Answers(Vegetable vegetable, string wanted) =>
        vegetable.Name.Equals(wanted, StringComparison.OrdinalIgnoreCase)
        || vegetable.Aliases.Any(alias => alias.Equals(wanted, StringComparison.OrdinalIgnoreCase));
}
