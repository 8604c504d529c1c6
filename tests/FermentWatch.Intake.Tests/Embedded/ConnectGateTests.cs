using FermentWatch.Intake.Embedded;
using FermentWatch.Intake.Tests.Doubles;

namespace FermentWatch.Intake.Tests.Embedded;

public sealed class ConnectGateTests
{
    private readonly Household _household = new();

    [Fact]
    public async Task Leave_OldConnectionEndsAfterTheNewOneCameIn_TheNewOneKeepsItsPlace()
    {
        (_, string password) = await _household.AddSensorAsync("cellar");
        var gate = Gate(1);
        await gate.EnterAsync("device", "cellar", password);
        Assert.Null((await gate.EnterAsync("device", "cellar", password)).Refusal);

        gate.Leave("device");
        Assert.Equal(1, gate.Count);
        gate.Leave("device");

        Assert.Equal(0, gate.Count);
        gate.Leave("device");
        Assert.Equal(0, gate.Count);
    }

    [Fact]
    public async Task WithdrawnAsync_PasswordChangedOrSensorRemoved_NamesThoseConnectedWithTheOld()
    {
        (var sensor, string password) = await _household.AddSensorAsync("cellar");
        (_, string other) = await _household.AddSensorAsync("crock-7");
        var gate = Gate(10);
        await gate.EnterAsync("a", "cellar", password);
        await gate.EnterAsync("b", "crock-7", other);
        Assert.Empty(await gate.WithdrawnAsync(CancellationToken.None));

        await _household.Book.RemoveAsync(sensor.Id, Household.Added, CancellationToken.None);
        Assert.Equal(["a"], await gate.WithdrawnAsync(CancellationToken.None));
        await _household.AddSensorAsync("crock-7");

        Assert.Equal(["a", "b"], (await gate.WithdrawnAsync(CancellationToken.None)).Order());
    }

    [Theory]
    [InlineData("", "x")]
    [InlineData("cellar", "")]
    [InlineData("nobody", "x")]
    public async Task EnterAsync_NoUserOrPassword_IsRefused(string user, string password) =>
        Assert.Equal(RefusalReason.BadCredentials, (await Gate(1).EnterAsync("device", user, password)).Refusal);

    [Fact]
    public async Task EnterAsync_TwoHundredIdsOfOneUser_KeepNobodyElseOut()
    {
        (_, string password) = await _household.AddSensorAsync("cellar");
        (_, string other) = await _household.AddSensorAsync("crock-7");
        var gate = Gate(200);
        var refusals = new List<RefusalReason?>();
        for (int i = 0; i < 200; i++)
            refusals.Add((await gate.EnterAsync($"id{i}", "cellar", password)).Refusal);
        Assert.Equal((20, 180), (refusals.Count(refusal => refusal is null), refusals.Count(refusal => refusal == RefusalReason.TooManyOfOneUser)));
        Assert.Null((await gate.EnterAsync("id0", "cellar", password)).Refusal);
        Assert.Null((await gate.EnterAsync("crock-7", "crock-7", other)).Refusal);
    }

    private ConnectGate Gate(int maxConnections) => new(_household.Book, new BrokerOptions { MaxConnections = maxConnections }, TimeProvider.System);
}
