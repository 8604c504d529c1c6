using FermentWatch.Intake.Embedded.Listening;

namespace FermentWatch.Intake.Tests.Embedded.Listening;

public sealed class WaitingRoomTests
{
    [Fact]
    public void Enter_NoPlaceLeft_SendsTheOneThatWaitedLongest()
    {
        var room = new WaitingRoom<string>(2);

        Assert.Null(room.Enter("first"));
        Assert.Null(room.Enter("second"));
        Assert.Equal("first", room.Enter("third"));
        Assert.Equal("second", room.Enter("fourth"));
        Assert.Equal(2, room.Count);
    }

    [Fact]
    public void Leave_LetIn_FreesItsPlaceAndNobodyHasToGo()
    {
        var room = new WaitingRoom<string>(1);
        room.Enter("first");

        Assert.True(room.Leave("first"));
        Assert.False(room.Leave("first"));
        Assert.Null(room.Enter("second"));
    }
}
