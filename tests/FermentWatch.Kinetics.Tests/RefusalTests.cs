namespace FermentWatch.Kinetics.Tests;

public class RefusalTests
{
    [Theory]
    [InlineData("how much", "nothing", "a mass from 10 g would be right, such as 800 g", "Enter how much, such as 800 g.")]
    [InlineData("mass", "nothing", "a mass such as 2.3kg would be right; for a brine alone ask --brine 5%",
        "Enter mass, such as 2.3kg; for a brine alone ask --brine 5%.")]
    [InlineData("how much", "lots", "a mass from 10 g would be right, such as 800 g", "lots cannot be used. Enter a mass from 10 g, such as 800 g.")]
    [InlineData("place", "attic", "one of Counter, Cellar would be right", "attic cannot be used. Choose one of Counter, Cellar.")]
    [InlineData("what", "nothing", "one of Film, Slime would be right", "Choose one of Film, Slime.")]
    [InlineData("packed on", "2020-01-01", "a day up to today, would be right", "2020-01-01 cannot be used. Enter a day up to today.")]
    [InlineData("name", "Mira", "somebody of that name is there already: another name would be right",
        "Mira cannot be used. Somebody of that name is there already: enter another name.")]
    [InlineData("salt", "225 %", "1.5 to 8 % would be right: with more salt nothing sours",
        "225 % cannot be used. Enter 1.5 to 8 %: with more salt nothing sours.")]
    [InlineData("taste", "a first taste", "an adult tastes first: ask one", "a first taste cannot be used. An adult tastes first: ask one.")]
    [InlineData("brine", "nothing", "pale or dark brine?", "Pale or dark brine?")]
    public void ToEnter_WhatCameAndWhatWouldBeRight_SaysWhatToEnter(string field, string came, string right, string said)
    {
        var refusal = new Refusal(field, came, right);
        Assert.Equal(said, refusal.ToEnter());
        Assert.Equal($"{field}: {said}", refusal.ToString());
    }
}
