namespace FermentWatch.Kinetics.Guilds;

/// <summary>First counts of the guilds on a kind of vegetable, log10 CFU per mL of juice and brine.</summary>
internal sealed record FirstCounts(double Starters, double ColdStarters, double Finishers, double ColdFinishers)
{
    public double this[int guild] => guild switch { 0 => Starters, 1 => ColdStarters, 2 => Finishers, _ => ColdFinishers };
}
