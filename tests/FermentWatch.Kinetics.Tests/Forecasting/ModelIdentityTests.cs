using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Produce;

namespace FermentWatch.Kinetics.Tests.Forecasting;

public class ModelIdentityTests
{
    /// <summary>The model by which the forecasts of households were drawn; another one draws every forecast anew.</summary>
    [Fact]
    public void Version_OfTheModelInUse_IsTheOneForecastsWereDrawnBy() => Assert.Equal("4-f72e4c4f", Forecaster.ModelVersion);

    /// <summary>Whatever figure of the model changes, its key does.</summary>
    [Fact]
    public void KeyOf_AnyParameterMoved_IsAnother()
    {
        ModelParameters model = ModelParameters.Current;
        var spread = new PriorSpread();
        ModelParameters[] moved =
        [
            model with { Guilds = [model.Guilds[0] with { SaltLimitPercent = 1 }, .. model.Guilds.Skip(1)] },
            model with { FirstCounts = [.. model.FirstCounts.Skip(1), model.FirstCounts[0]] },
            model with { Lag = 1 }, model with { PhSteepness = 1 }, model with { HalfHexose = 1 }, model with { LacticLimit = 1 },
            model with { AceticWeight = 1 }, model with { SaltPower = 1 }, model with { LowSaltPercent = 1 }, model with { Rooms = [1, 1, 1, 1] },
            model with { ExchangePerHour = [1, 1, 1, 1, 1] }, model with { DrawnJuice = [1, 1, 1, 1, 1] },
            .. Vegetable.All.Take(25).Select(each => model with { TriedStrongIonShares = new Dictionary<string, double> { [each.Name] = 1 } }),
        ];
        IEnumerable<ulong> ofModels = moved.Prepend(model).Select(each => ModelIdentity.KeyOf(each, spread));
        ulong[] keys = [.. ofModels, ModelIdentity.KeyOf(model, spread with { LnLag = 1 })];
        Assert.Equal(keys.Length, keys.Distinct().Count());
        Assert.Equal(typeof(ModelParameters).GetProperties().Count(property => property.CanWrite), moved.Length - 24);
    }
}
