using System.Security.Cryptography;
using System.Text;
using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Records;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace FermentWatch.Storage.Tests;

/// <summary>A household's files carry the names of the steps that they have been through, so a step that has landed never changes: what it did
/// wrong is put right by one after it. Each is held to the print (SHA-256, first 16 digits) of the SQL that it ran when it landed.</summary>
public sealed class LandedStepsTests
{
    public static TheoryData<string, string> OfRecords => new()
    {
        { "20261125183748_Initial", "02fc09311b0dabf6" },
        { "20261128204500_CompactForecasts", "8f3219c845846850" },
        { "20261128205439_SignInsAndWhoMadeWhat", "7d86e5d05ab667b1" },
        { "20261128220000_JarCorrections", "53ad97125d04e5c2" },
        { "20261128220112_PhToolAndWhatWasDone", "afa67758c8607a57" },
        { "20261129000851_StarterBrineOfAnEarlierJar", "ae28fae712cc24a3" },
        { "20261129034501_VinegarSampleTemperatureAndTitrations", "0ec8f65c10299fdc" },
        { "20261129044500_WhatWhoeverSawItWas", "c0a92f7202d904b9" },
        { "20261129202000_PeopleByAccount", "4ec1b5dce906bf15" },
        { "20261129220000_RevisionOfEachJar", "49f3fc683ed1fb18" },
        { "20261130064500_ClockFaceAndWeekStart", "fdd44aae09262bab" },
        { "20261130171000_TastesAskedFor", "3eaef40c643572fe" },
        { "20261130225500_DecisionsAskedFor", "9de894e34286146f" },
        { "20261202000000_PortionsAndWhereJarsGo", "7d2c867eae9c38bd" },
        { "20261203000000_RecipesOfTheHousehold", "966863f8827cb43d" },
        { "20261205000000_KeysForScripts", "8d7086589f1a0baf" },
    };

    public static TheoryData<int, string> OfReadings => new()
    {
        { 1, "5b769158ebf4218c" },
        { 2, "cd8c3da01568a9b2" },
        { 3, "6d05ddb377325a5f" },
    };

    [Theory]
    [MemberData(nameof(OfRecords))]
    public void Migration_ThatHasLanded_RunsWhatItRanThen(string migration, string print)
    {
        using var context = RecordsConnection.Context("records.db", SqliteOpenMode.Memory);
        string before = context.Database.GetMigrations().TakeWhile(each => each != migration).LastOrDefault(Migration.InitialDatabase);
        Assert.Equal(print, PrintOf(context.GetService<IMigrator>().GenerateScript(before, migration)));
    }

    [Theory]
    [MemberData(nameof(OfReadings))]
    public void StepOfReadings_ThatHasLanded_RunsWhatItRanThen(int from, string print) =>
        Assert.Equal(print, PrintOf(ReadingSchema.Steps[from - 1]));

    [Fact]
    public void EachStep_HasItsPrintHere()
    {
        using var context = RecordsConnection.Context("records.db", SqliteOpenMode.Memory);
        Assert.Equal(context.Database.GetMigrations(), OfRecords.Select(row => (string)row[0]));
        Assert.Equal(Enumerable.Range(1, ReadingSchema.Steps.Length), OfReadings.Select(row => (int)row[0]));
    }

    /// <summary>Of the words alone: how lines are broken, and which version of the library wrote them down, changes nothing in a file.</summary>
    private static string PrintOf(string sql)
    {
        string words = string.Join(' ', sql.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
            .Replace(ProductInfo.GetVersion(), "", StringComparison.Ordinal);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(words)))[..16];
    }
}
