namespace Tamis.Composition.Import;

/// <summary>The fields of the Standard Reference's files, in their order (documentation of release 28, 2016).</summary>
internal static class StandardReferenceFields
{
    public static readonly string[] Foods =
        ["NDB_No", "FdGrp_Cd", "Long_Desc", "Shrt_Desc", "ComName", "ManufacName", "Survey", "Ref_desc", "Refuse", "SciName", "N_Factor", "Pro_Factor", "Fat_Factor", "CHO_Factor"];

    public static readonly string[] Values =
        ["NDB_No", "Nutr_No", "Nutr_Val", "Num_Data_Pts", "Std_Error", "Src_Cd", "Deriv_Cd", "Ref_NDB_No", "Add_Nutr_Mark", "Num_Studies", "Min", "Max", "DF", "Low_EB", "Up_EB", "Stat_cmt", "AddMod_Date", "CC"];

    public static readonly string[] Weights = ["NDB_No", "Seq", "Amount", "Msre_Desc", "Gm_Wgt", "Num_Data_Pts", "Std_Dev"];

    public static readonly string[] Definitions = ["Nutr_No", "Units", "Tagname", "NutrDesc", "Num_Dec", "SR_Order"];

    public static readonly string[] Pair = ["code", "description"];

    /// <summary>Fields 3 to 48 are nutrients, named here by their place, as <c>import-codes.csv</c> names them.</summary>
    public static readonly string[] Abbreviated = ["NDB_No", "Shrt_Desc", .. Enumerable.Range(3, 46).Select(place => $"field {place}"), "GmWt_1", "GmWt_Desc1", "GmWt_2", "GmWt_Desc2", "Refuse_Pct"];
}
