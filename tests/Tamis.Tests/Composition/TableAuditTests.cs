using Tamis.Composition;
using Tamis.Tables;

namespace Tamis.Tests.Composition;

public sealed class TableAuditTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Of_ShippedTable_HasNoUnexplainedFinding()
    {
        var audit = TableAudit.Of(ShippedTable.Table);

        Assert.True(audit.Findings.Count > 0);
        Assert.Empty(audit.Unexplained.Select(finding => finding.ToString()));
        Assert.Empty(audit.Unneeded);
    }

    // Each planted fault is what a slip of the hand or of a unit makes of a sound flour.
    [Theory]
    [InlineData("WATER", "10.9", "proximates sum to 100", AuditSeverity.Wrong, "WATER=1.09")]
    [InlineData("FASAT", "0.2", "saturates within fat", AuditSeverity.Wrong, "FASAT=2")]
    [InlineData("SUGAR", "0.3", "sugars within carbohydrate", AuditSeverity.Wrong, "SUGAR=80")]
    [InlineData("FIBTG", "2.7", "fibre within carbohydrate", AuditSeverity.Wrong, "FIBTG=77")]
    [InlineData("CHOLE", "0", "cholesterol only in animal foods", AuditSeverity.Doubtful, "CHOLE=12")]
    [InlineData("NA", "2", "minerals within ash", AuditSeverity.Doubtful, "NA=2000")]
    [InlineData("ALC", "0", "alcohol only where it belongs", AuditSeverity.Doubtful, "ALC=4")]
    [InlineData("ENERC_KCAL", "354", "energy by the record's factors", AuditSeverity.Doubtful, "ENERC_KCAL=453")]
    [InlineData("FAMS", "0.1", "fatty acids within fat", AuditSeverity.Wrong, "FAMS=1.4")]
    [InlineData("SUCS", "0.2", "single sugars against sugars", AuditSeverity.Doubtful, "SUCS=2")]
    [InlineData("STARCH", "70", "starch and sugars within carbohydrate", AuditSeverity.Doubtful, "STARCH=90")]
    [InlineData("FOLAC", "0", "folic acid within folate", AuditSeverity.Wrong, "FOLAC=154")]
    public void Of_APlantedFault_IsFoundByItsRule(string tag, string sound, string rule, AuditSeverity least, string planted)
    {
        var before = Flour($"{tag}={sound}");
        var after = Flour(planted);

        Assert.DoesNotContain(before.Findings, finding => finding.Rule.Name == rule);
        var found = Assert.Single(after.Findings, finding => finding.Rule.Name == rule);
        Assert.True(found.Rule.Severity >= least || rule == "proximates sum to 100");
        Assert.Equal("LAB 1", found.Food.Id);
        Assert.False(found.IsExplained);
        Assert.NotEmpty(found.Expected);
        Assert.NotEmpty(found.Rule.Source.Key);
    }

    [Theory]
    [InlineData("10.95", null)]
    [InlineData("8.9", AuditSeverity.Look)]
    [InlineData("6.9", AuditSeverity.Doubtful)]
    [InlineData("15.1", AuditSeverity.Look)]
    [InlineData("17.1", AuditSeverity.Doubtful)]
    public void Of_Proximates_AreAcceptableOrPreferred(string water, AuditSeverity? expected)
    {
        // FAO/INFOODS (2012): 95 to 105 g acceptable, 97 to 103 g preferred; the other proximates of this flour are 87.98 g.
        var found = Flour($"WATER={water}").Findings.SingleOrDefault(finding => finding.Rule.Name == "proximates sum to 100");

        Assert.Equal(expected, found?.Rule.Severity);
    }

    [Fact]
    public void Of_UnknownFigures_AreNoFindingAndSaidToBeUntested()
    {
        var audit = Audit("LAB 1,FAT,,1.5,lab\n");

        Assert.Empty(audit.Findings);
        Assert.Equal(0, audit.Tested.Single(tested => tested.Rule.Name == "proximates sum to 100").Figures);
    }

    [Fact]
    public void Of_AContentATenthOfItsGroup_IsASlipByTens()
    {
        var contents = string.Concat(Enumerable.Range(1, 12).Select(i => FormattableString.Invariant($"LAB {i},K,,{(i == 5 ? 10.4 : 100 + i)},lab\n")));
        var found = Assert.Single(Audit(contents, foods: 12).Findings, finding => finding.Rule.Kind == AuditKind.Tens);

        Assert.Equal(("LAB 5", "K"), (found.Food.Id, found.Tag));
        Assert.InRange(found.Low!.Value, 70, 110);
        Assert.Equal("lab, food 5", found.Origin!.ToString());
    }

    // 35 µg and the margin of 1 µg are 36 µg, which is not less than 36 µg whatever the last digit of a double says.
    [Fact]
    public void Of_AFigureOnItsLimit_IsNoFinding() => Assert.Empty(Audit("LAB 1,FOL,,35,lab\nLAB 1,FOLAC,,36,lab\n").Findings);

    [Fact]
    public void Of_AMeanOutsideItsSamples_IsWrong()
    {
        _folder.Write("contents.csv", "food,tag,state,value,low,high,samples,standard_deviation,source\nLAB 1,FAT,,1.5,1.6,1.9,4,0.1,lab\n");
        var found = Assert.Single(Audit(null).Findings);

        Assert.Equal((AuditKind.Samples, "1.6 to 1.9 g"), (found.Rule.Kind, found.Expected));
    }

    [Fact]
    public void Of_ExplainedFinding_SaysWhyAndAnExplanationTooManyIsNamed()
    {
        var explained = _folder.Write("explained.csv", "food,rule,tag,why\nlab 1,Saturates within fat,,the laboratory swapped two columns\nLAB 1,fibre within carbohydrate,,no longer so\n");
        var audit = Flour("FASAT=2", AuditRules.Shipped.ExplainedBy(explained));
        var found = Assert.Single(audit.Findings, finding => finding.Rule.Name == "saturates within fat");

        Assert.Equal("the laboratory swapped two columns", found.Explanation);
        Assert.Equal("fibre within carbohydrate", Assert.Single(audit.Unneeded).Rule);
    }

    [Fact]
    public void Load_BadRules_AreAllNamed()
    {
        _folder.Write("audit-groups.csv", "group,kinds\nflour,plant\nFlour,plant\n");
        _folder.Write("audit-rules.csv", "rule,kind,left,right,severity,source,strength\na,inside,FAT,,wrong,own,practice\nb,within,FAT +,WATER,wrong,own,practice\nc,within,FAT,,wrong,own,practice\n");

        var error = Assert.Throws<TableException>(() => AuditRules.Load(_folder.Path));

        Assert.Equal([("audit-rules.csv", 2, "kind"), ("audit-rules.csv", 3, "left"), ("audit-rules.csv", 4, "right"), ("audit-groups.csv", 3, "group")],
            error.Problems.Select(problem => (problem.File, problem.Row, problem.Column)));
    }

    [Theory]
    [InlineData("WATER + PROCNT", true)]
    [InlineData("4 PROCNT + 9 FAT - [ALC]", true)]
    [InlineData("", false)]
    [InlineData("+ FAT", false)]
    [InlineData("FAT FAT", false)]
    [InlineData("4 9 FAT", false)]
    [InlineData("FAT + 2", false)]
    public void Parse_Sum_IsRefusedWhereItIsNone(string text, bool isSum) => Assert.Equal(isSum, AuditSum.Parse(text) is not null);

    private TableAudit Flour(string changed, AuditRules? rules = null)
    {
        Dictionary<string, string> contents = new()
        {
            ["WATER"] = "10.95", ["PROCNT"] = "9.7", ["FAT"] = "1.48", ["CHOCDF"] = "76.22", ["FIBTG"] = "2.4", ["ASH"] = "0.58", ["ALC"] = "0", ["SUGAR"] = "0.31", ["SUCS"] = "0.2",
            ["STARCH"] = "70", ["FASAT"] = "0.24", ["FAMS"] = "0.14", ["FAPU"] = "0.73", ["CHOLE"] = "0", ["NA"] = "2", ["K"] = "149", ["CA"] = "20", ["P"] = "99",
            ["FOL"] = "26", ["FOLAC"] = "0", ["ENERC_KCAL"] = "364",
        };
        var (tag, value) = (changed.Split('=')[0], changed.Split('=')[1]);
        contents[tag] = value;
        return Audit(string.Concat(contents.Select(pair => $"LAB 1,{pair.Key},,{pair.Value},lab\n")), rules: rules);
    }

    private TableAudit Audit(string? contents, int foods = 1, AuditRules? rules = null)
    {
        _folder.Write("sources.csv", "key,evidence,title\nlab,published,Our laboratory\n");
        File.Copy(Path.Combine(ShippedTable.Folder, "nutrients.csv"), Path.Combine(_folder.Path, "nutrients.csv"), overwrite: true);
        _folder.Write("foods.csv", "food,name,group,source,protein_kcal_g,fat_kcal_g,carbohydrate_kcal_g\n"
            + string.Concat(Enumerable.Range(1, foods).Select(i => $"LAB {i},Flour {i},Flours and grains,lab,4.05,8.37,4.12\n")));
        if (contents is not null) _folder.Write("contents.csv", "food,tag,state,value,source\n" + contents);
        return TableAudit.Of(CompositionTable.Load(_folder.Path), rules);
    }
}
