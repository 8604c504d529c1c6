namespace FermentWatch.Service.Tests.CommandLine;

public sealed class MemberTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("fermentwatch-members").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Add_TwoPeople_ListsThemWithTheirRoles()
    {
        Call rowan = await Run("add", "Rowan");
        Call wren = await Run("add", "wren", "--role", "child");
        Assert.Equal((0, 0), (rowan.ExitCode, wren.ExitCode));
        Assert.Matches("^name      Rowan\npassword  [a-z2-9-]{27}\nThe password is not kept and is not shown again.\n$", rowan.Output);
        Assert.Equal("name,role\nRowan,adult\nwren,child\n", (await Run("list", "--csv")).Output);
    }

    [Fact]
    public async Task Password_FromTheInput_IsNotRepeated()
    {
        await Run("add", "Rowan");
        Call call = await Typed("four big cabbages\n", "password", "rowan", "--stdin");
        Assert.Equal((0, "name      rowan\n", ""), (call.ExitCode, call.Output, call.Error));
    }

    [Theory]
    [InlineData("add rowan", "name: rowan cannot be used. Somebody of that name is there already: enter another name.")]
    [InlineData("add Wren --role cook", "role: cook cannot be used. Choose one of Adult, Child.")]
    [InlineData("password Rowen", "name: Rowen cannot be used. Did you mean Rowan?")]
    [InlineData("remove nobody", "name: nobody cannot be used. Choose one of Rowan.")]
    [InlineData("remove Rowan", "name: Rowan cannot be used. The last adult stays: add another first.")]
    [InlineData("add Wren --stdin", "password: what was given cannot be used. Passwords must be at least 10 characters.")]
    [InlineData("password Rowan --stdin", "password: what was given cannot be used. Passwords must be at least 10 characters.")]
    public async Task Verb_WrongCall_ExitsTwoWithOneLine(string args, string line)
    {
        await Run("add", "Rowan");
        Call call = await Typed("kraut4u\n", args.Split(' '));
        Assert.Equal((2, ""), (call.ExitCode, call.Output));
        Assert.Equal(line, Assert.Single(call.ErrorLines));
    }

    [Fact]
    public async Task Remove_OneOfTwoAdults_LeavesTheOther()
    {
        await Run("add", "Rowan");
        await Run("add", "Ash");
        Assert.Equal("Rowan cannot sign in any more; what Rowan entered stays.\n", (await Run("remove", "Rowan")).Output);
        Assert.Equal("name,role\nAsh,adult\n", (await Run("list", "--csv")).Output);
    }

    private Task<Call> Run(params string[] args) => Typed("", args);

    private Task<Call> Typed(string input, params string[] args) =>
        Call.WithInput(input, new Dictionary<string, string> { ["FERMENTWATCH__STORAGE__FOLDER"] = _folder }, ["member", .. args]);
}
