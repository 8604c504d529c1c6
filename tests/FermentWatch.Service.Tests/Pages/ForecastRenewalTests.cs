using FermentWatch.Acts;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Service.Tests.Health;
using Microsoft.AspNetCore.Builder;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using NSubstitute;

namespace FermentWatch.Service.Tests.Pages;

public sealed class ForecastRenewalTests(FoundedHousehold founded) : IClassFixture<FoundedHousehold>, IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    private readonly string _folder = founded.Copy();
    private readonly FakeTimeProvider _clock = new(FoundedHousehold.Now.ToDateTimeOffset());
    private readonly TaskCompletionSource _gate = new();

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task Run_ForecastThatTakesLong_AnswersTheEntryAndSaysThatItIsAtWorkUntilItIsDone()
    {
        await using WebApplication app = FoundedHousehold.Service(_folder, FoundedHousehold.Now);
        IForecastBook slow = Substitute.For<IForecastBook>();
        slow.LatestAsync(Arg.Any<CancellationToken>()).Returns(async _ =>
        {
            await _gate.Task;
            return (IReadOnlyList<JarForecast>)[];
        });
        var renewal = ActivatorUtilities.CreateInstance<ForecastRenewal>(app.Services,
            ActivatorUtilities.CreateInstance<ForecastPass>(app.Services, slow), _clock);
        Jar jar = founded.Jars.First(each => each.Stage == JarStage.Fermenting);

        Task entry = renewal.RunAsync([jar], CancellationToken.None);
        Assert.False(entry.IsCompleted);
        _clock.Advance(TimeSpan.FromMilliseconds(150));
        await entry.WaitAsync(Patience);
        Assert.True(renewal.IsAtWork(jar.Id));
        await slow.DidNotReceive().SaveAsync(Arg.Any<IReadOnlyList<RenewedForecast>>(), Arg.Any<CancellationToken>());

        _gate.SetResult();
        Assert.True(SpinWait.SpinUntil(() => !renewal.IsAtWork(jar.Id), Patience));
        await slow.Received(1)
            .SaveAsync(Arg.Is<IReadOnlyList<RenewedForecast>>(saved => saved.Single().Forecast.JarId == jar.Id), Arg.Any<CancellationToken>());
    }

    [Fact]
    public async Task Run_ForecastThatIsSoonDone_IsWaitedForWhateverTheClockSays()
    {
        await using WebApplication app = FoundedHousehold.Service(_folder, FoundedHousehold.Now);
        Jar jar = founded.Jars.First(each => each.Stage == JarStage.Fermenting);
        var renewal = ActivatorUtilities.CreateInstance<ForecastRenewal>(app.Services, _clock);
        await renewal.RunAsync([jar], CancellationToken.None).WaitAsync(Patience);
        Assert.False(renewal.IsAtWork(jar.Id));
        Assert.NotNull(await app.Services.GetRequiredService<IForecastBook>().LatestAsync(jar.Id, CancellationToken.None));
    }
}
