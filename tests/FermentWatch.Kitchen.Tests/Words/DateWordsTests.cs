using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Words;

public class DateWordsTests
{
    /// <summary>A Monday.</summary>
    private static readonly LocalDate Today = new(2026, 10, 5);

    [Theory]
    [InlineData(-8, "27 September", "on 27 September")]
    [InlineData(-2, "3 October", "on 3 October")]
    [InlineData(-1, "yesterday", "yesterday")]
    [InlineData(0, "today", "today")]
    [InlineData(1, "tomorrow", "tomorrow")]
    [InlineData(2, "Wednesday", "Wednesday")]
    [InlineData(6, "Sunday", "Sunday")]
    [InlineData(7, "12 October", "on 12 October")]
    [InlineData(149, "3 March 2027", "on 3 March 2027")]
    public void NameAndWhen_ByDistance_SayTheWeekdayOnlyWithinAWeek(int days, string name, string when)
    {
        Assert.Equal(name, DateWords.Name(Today.PlusDays(days), Today));
        Assert.Equal(when, DateWords.When(Today.PlusDays(days), Today));
    }
}
