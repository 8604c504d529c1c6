namespace FermentWatch.Kinetics.Guilds;

/// <summary>One guild of lactic acid bacteria. Counts are in 1e9 CFU per mL of juice and brine.</summary>
/// <param name="Name">What it is called in tables.</param>
/// <param name="OptimumRatePerHour">Growth rate where nothing limits, 1/h.</param>
/// <param name="Temperature">Cardinal temperatures.</param>
/// <param name="SaltChill">How much a per cent of salt raises the least temperature, Celsius.</param>
/// <param name="HalfPh">pH at which growth is halved.</param>
/// <param name="HalfAcidMolesPerLitre">Undissociated acid (acetic weighted) that halves growth, mol/L.</param>
/// <param name="SaltLimitPercent">Salt at which growth ends, per cent.</param>
/// <param name="GrowthHexose">Hexose used for growth, mol/L per 1e9 CFU/mL.</param>
/// <param name="MaintenanceHexosePerHour">Hexose used without growth at the optimum, mol/L/h per 1e9 CFU/mL.</param>
/// <param name="LacticYield">Lactic acid a hexose, mol.</param>
/// <param name="AceticYield">Acetic acid a hexose, mol.</param>
internal sealed record Guild(
    string Name, double OptimumRatePerHour, CardinalTemperatures Temperature, double SaltChill, double HalfPh, double HalfAcidMolesPerLitre,
    double SaltLimitPercent, double GrowthHexose, double MaintenanceHexosePerHour, double LacticYield, double AceticYield);
