using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-600, butane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R600
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-600",
        Name = "butane",
        CasNumber = "106-97-8",
        Source = "D. Buecker and W. Wagner, (2006), Reference Equations of State for the Thermodynamic Properties of "
            + "Fluid Phase n-Butane and Isobutane, J. Phys. Chem. Ref. Data, vol. 35, 929-1019, "
            + "doi:10.1063/1.1901687",
        MolarMass = 0.0581222,
        GasConstant = 8.314472,
        ReducingTemperature = 425.125,
        ReducingMolarDensity = 3922.769612987809,
        CriticalTemperature = 425.125,
        CriticalPressure = 3796000,
        CriticalMolarDensity = 3922.769612987809,
        AcentricFactor = 0.200810094644,
        MinimumTemperature = 134.895,
        MaximumTemperature = 575,
        MaximumPressure = 12000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3.24680487,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 5.54913289, 0.774840445 },
                { 11.4648996, 3.340602552 },
                { 7.59987584, 4.970513096 },
                { 9.66033239, 9.975553778 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 2.5536998241635, 1, 0.5, 0 },
                { -4.4585951806696, 1, 1, 0 },
                { 0.82425886369063, 1, 1.5, 0 },
                { 0.11215007011442, 2, 0, 0 },
                { -0.035910933680333, 3, 0.5, 0 },
                { 0.016790508518103, 4, 0.5, 0 },
                { 0.032734072508724, 4, 0.75, 0 },
                { 0.95571232982005, 1, 2, 1 },
                { -1.0003385753419, 1, 2.5, 1 },
                { 0.085581548803855, 2, 2.5, 1 },
                { -0.025147918369616, 7, 1.5, 1 },
                { -0.0015202958578918, 8, 1, 1 },
                { 0.004706068232642, 8, 1.5, 1 },
                { -0.097845414174006, 1, 4, 2 },
                { -0.04831790415876, 2, 7, 2 },
                { 0.17841271865468, 3, 3, 2 },
                { 0.018173836739334, 3, 7, 2 },
                { -0.11399068074953, 4, 3, 2 },
                { 0.019329896666669, 5, 1, 2 },
                { 0.001157587740101, 5, 6, 2 },
                { 0.00015253808698116, 10, 0, 2 },
                { -0.043688558458471, 2, 6, 3 },
                { -0.0082403190629989, 6, 13, 3 },
            },
            Gaussian = new double[,]
            {
                { -0.028390056949441, 1, 2, 10, 150, 1.16, 0.85 },
                { 0.0014904666224681, 2, 0, 10, 200, 1.13, 1 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00048897, 5.0043E-06 },
            { 220.22, 0.00037236, 5.4822E-06 },
            { 239.43, 0.00029284, 5.9526E-06 },
            { 258.65, 0.00023572, 6.4176E-06 },
            { 277.86, 0.00019306, 6.883E-06 },
            { 297.08, 0.00016001, 7.3614E-06 },
            { 316.29, 0.00013361, 7.8731E-06 },
            { 335.51, 0.00011181, 8.4511E-06 },
            { 354.72, 9.3229E-05, 9.1468E-06 },
            { 373.94, 7.6765E-05, 1.0052E-05 },
            { 393.16, 6.1416E-05, 1.1368E-05 },
            { 412.37, 4.5453E-05, 1.3808E-05 },
        },
    };
}
