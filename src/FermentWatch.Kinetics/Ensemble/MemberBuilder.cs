using FermentWatch.Kinetics.Chemistry;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Simulation;

namespace FermentWatch.Kinetics.Ensemble;

/// <summary>Turns a member's standard deviates into the constants of its lane.</summary>
internal sealed class MemberBuilder(JarContents contents, ModelParameters model, PriorSpread spread, double saltDeviationPercent)
{
    private readonly double[] _slots = new double[MemberConstant.Count];

    /// <summary>The constants of a member; the span is overwritten by the next call.</summary>
    public ReadOnlySpan<double> Build(ReadOnlySpan<double> deviates)
    {
        double salt = Math.Clamp(contents.SaltPercent + (saltDeviationPercent * deviates[Deviate.Salt]), 0, 15);
        Growth(deviates, salt);
        double saltMoles = contents.SaltPercent > 0 ? contents.Native.Salt * salt / contents.SaltPercent : 0;
        Chemistry(deviates, saltMoles);
        Start(deviates);
        Noise(deviates);
        return _slots;
    }

    private static double Factor(double lnSpread, double deviate) => Math.Exp(lnSpread * deviate);

    private void Growth(ReadOnlySpan<double> z, double salt)
    {
        double rate = Factor(spread.LnRate, z[Deviate.Rate]);
        double finisherRate = Factor(spread.LnFinisherRate, z[Deviate.FinisherRate]);
        double upkeep = Factor(spread.LnUpkeep, z[Deviate.Upkeep]);
        double starterAcid = Factor(spread.LnStarterAcid, z[Deviate.StarterAcid]);
        double tolerance = Factor(spread.LnAcidTolerance, z[Deviate.AcidTolerance]);
        for (int g = 0; g < ModelParameters.GuildCount; g++)
        {
            Guild guild = model.Guilds[g];
            double bearable = SaltTerm.Share(salt, guild.SaltLimitPercent, model.SaltPower) * SaltTerm.AgainstOthers(salt, model.LowSaltPercent);
            double acid = g < 2 ? starterAcid : 1;
            double own = g < 2 ? 1 : finisherRate;
            _slots[MemberConstant.Rate + g] = rate * own * bearable * guild.OptimumRatePerHour;
            _slots[MemberConstant.Maintenance + g] = rate * upkeep * acid * bearable * guild.MaintenanceHexosePerHour;
            _slots[MemberConstant.GrowthHexose + g] = acid * guild.GrowthHexose;
            _slots[MemberConstant.LacticYield + g] = guild.LacticYield;
            _slots[MemberConstant.AceticYield + g] = guild.AceticYield;
            _slots[MemberConstant.TemperatureMinimum + g] = guild.Temperature.Minimum + (guild.SaltChill * salt);
            _slots[MemberConstant.TemperatureOptimum + g] = guild.Temperature.Optimum;
            _slots[MemberConstant.TemperatureMaximum + g] = guild.Temperature.Maximum;
            _slots[MemberConstant.PhFactor + g] = Math.Pow(10, model.PhSteepness * (guild.HalfPh + (spread.HalfPh * z[Deviate.PhTolerance])));
            _slots[MemberConstant.AcidFactor + g] = Math.Pow(guild.HalfAcidMolesPerLitre * tolerance, -3);
        }
        _slots[MemberConstant.PhPower] = model.PhSteepness;
        _slots[MemberConstant.InverseRoom] = 1 / contents.Room;
        _slots[MemberConstant.AceticWeight] = model.AceticWeight;
        _slots[MemberConstant.HalfHexose] = model.HalfHexose;
        _slots[MemberConstant.InverseLacticLimit] = 1 / model.LacticLimit;
        _slots[MemberConstant.LagFactor] = Math.Exp(model.Lag * Factor(spread.LnLag, z[Deviate.Lag])) - 1;
        _slots[MemberConstant.TemperatureDeviate] = z[Deviate.Temperature];
    }

    private void Chemistry(ReadOnlySpan<double> z, double salt)
    {
        double strong = Factor(contents.Ignorance * spread.LnStrongIons, z[Deviate.StrongIons]);
        double acids = Factor(contents.Ignorance * spread.LnNativeAcids, z[Deviate.NativeAcids]);
        AcidMixture n = contents.Native;
        // Raw juice stays near its raw pH: what the known acids do not carry of the strong ions, the side chains carry.
        double known = n.StrongIonDifference - n.SideChain;
        double sideChain = Math.Max(0.2 * n.SideChain, n.SideChain + ((strong - 1) * n.StrongIonDifference) - ((acids - 1) * known));
        double strongIons = sideChain - n.SideChain + n.StrongIonDifference + ((acids - 1) * known);
        DissociationConstants k = DissociationConstants.At(salt + strongIons);
        _slots[MemberConstant.Lactic] = k.Lactic;
        _slots[MemberConstant.Acetic] = k.Acetic;
        _slots[MemberConstant.Malic1] = k.Malic1;
        _slots[MemberConstant.Malic12] = k.Malic1 * k.Malic2;
        _slots[MemberConstant.Citric1] = k.Citric1;
        _slots[MemberConstant.Citric12] = k.Citric1 * k.Citric2;
        _slots[MemberConstant.Citric123] = k.Citric1 * k.Citric2 * k.Citric3;
        _slots[MemberConstant.Phosphoric1] = k.Phosphoric1;
        _slots[MemberConstant.Phosphoric12] = k.Phosphoric1 * k.Phosphoric2;
        _slots[MemberConstant.SideChain] = k.SideChain;
        _slots[MemberConstant.Water] = k.Water;
        _slots[MemberConstant.FreeHydrogen] = 1 / k.HydrogenActivityCoefficient;
        _slots[MemberConstant.StrongIons] = strongIons;
        _slots[MemberConstant.MalicTotal] = acids * n.Malic;
        _slots[MemberConstant.CitricTotal] = acids * n.Citric;
        _slots[MemberConstant.PhosphateTotal] = acids * n.Phosphate;
        _slots[MemberConstant.SideChainTotal] = sideChain;
        _slots[MemberConstant.NativeAcidity] = TitratableAcidity.MolesPerLitre(new(strongIons, 0, 0, acids * n.Malic, acids * n.Citric,
            acids * n.Phosphate,
            sideChain, salt));
    }

    /// <summary>The pace's course and what the model itself is off by.</summary>
    private void Noise(ReadOnlySpan<double> z)
    {
        double kept = spread.PaceMemory;
        double fresh = Math.Sqrt(1 - (kept * kept));
        double pace = 0;
        for (int knot = 0; knot < LanePace.Knots; knot++)
        {
            pace = knot == 0 ? z[Deviate.Pace] : (kept * pace) + (fresh * z[Deviate.Pace + knot]);
            _slots[MemberConstant.LnPace + knot] = spread.LnPace * pace;
            _slots[MemberConstant.PhOffset + knot] = spread.PhOffset * z[Deviate.PhOffset + knot];
        }
        _slots[MemberConstant.LnStagePace] = spread.LnStagePace * z[Deviate.StagePace];
        _slots[MemberConstant.AcidityFactor] = Factor(spread.LnAcidityOffset, z[Deviate.AcidityOffset]);
    }

    private void Start(ReadOnlySpan<double> z)
    {
        double starters = Math.Pow(10, contents.Ignorance * spread.StartersLog10 * z[Deviate.Starters]);
        double finishers = Math.Pow(10, spread.FinishersLog10 * z[Deviate.Finishers]);
        for (int g = 0; g < ModelParameters.GuildCount; g++)
            _slots[MemberConstant.FirstLnCount + g] = Math.Log(contents.FirstCounts[g] * (g < 2 ? starters : finishers));
        _slots[MemberConstant.Exchange] = contents.ExchangePerHour * Factor(spread.LnExchange, z[Deviate.Exchange]);
        _slots[MemberConstant.OuterShare] = contents.OuterShare;
        _slots[MemberConstant.OuterStart] = contents.OuterStart;
        double inner = (1 - (contents.OuterStart * contents.OuterShare)) / (1 - contents.OuterShare);
        _slots[MemberConstant.InnerStart] = inner;
        double hexose = contents.Hexose * Factor(contents.Ignorance * spread.LnSugar, z[Deviate.Sugar]);
        _slots[MemberConstant.FirstHexoseOuter] = hexose * contents.OuterStart;
        _slots[MemberConstant.FirstHexoseInner] = hexose * inner;
        _slots[MemberConstant.FirstLactic] = contents.AddedLactic;
        _slots[MemberConstant.FirstAcetic] = contents.AddedAcetic;
    }
}
