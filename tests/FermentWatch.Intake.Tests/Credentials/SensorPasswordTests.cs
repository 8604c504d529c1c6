using FermentWatch.Intake.Credentials;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Intake.Tests.Credentials;

public sealed class SensorPasswordTests
{
    [Fact]
    public void Generate_Always_HasAHundredBitsOfUnmistakableCharacters()
    {
        string[] passwords = [.. Enumerable.Range(0, 200).Select(_ => SensorPassword.Generate())];

        Assert.True(SensorPassword.Length * Math.Log2(SensorPassword.Characters.Length) >= 100);
        Assert.All(passwords, password => Assert.Matches("^[a-hj-kmnp-z2-9]{6}(-[a-hj-kmnp-z2-9]{6}){3}$", password));
        Assert.Equal(passwords.Length, passwords.Distinct().Count());
        Assert.Equal(SensorPassword.Characters.Order(), passwords.SelectMany(p => p).Where(c => c != '-').Distinct().Order());
    }

    [Fact]
    public void Verify_PasswordOfTheCredential_IsTrueAndAnyOtherIsNot()
    {
        IssuedCredential issued = new CredentialIssuer().ForGateway("hub", "gateway/#");

        Assert.True(SensorPassword.Verify(issued.Credential, issued.Password));
        Assert.False(SensorPassword.Verify(issued.Credential, issued.Password + "x"));
        Assert.False(SensorPassword.Verify(issued.Credential, ""));
        Assert.DoesNotContain(issued.Password, issued.Credential.PasswordHash, StringComparison.Ordinal);
    }

    [Fact]
    public void Verify_KeptHashIsNone_IsFalse()
    {
        var credential = new MqttCredential { Id = Guid.Empty, User = "x", PasswordHash = "not a hash!", TopicFilter = "a" };

        Assert.False(SensorPassword.Verify(credential, "not a hash!"));
    }

    [Fact]
    public void ForSensor_Always_ReachesItsOwnTopicsOnly()
    {
        var sensor = new Sensor { Id = Guid.CreateVersion7(), Slug = "cellar", Name = "Cellar", AddedAt = Doubles.Household.Added };

        MqttCredential credential = new CredentialIssuer().ForSensor(sensor).Credential;

        Assert.Equal(("cellar", "fermentwatch/sensor/cellar/#", sensor.Id), (credential.User, credential.TopicFilter, credential.SensorId));
    }
}
