// What cities are called beside the name in the list: mostly in German. "Wien" finds Vienna, and is called Wien then.

/** Name, the list's name, country; commonly used names, no official list. */
export const OTHER_NAMES = `
Wien|Vienna|AT
München|Munich|DE
Köln|Cologne|DE
Genf|Geneva|CH
Rom|Rome|IT
Mailand|Milan|IT
Venedig|Venice|IT
Florenz|Florence|IT
Neapel|Naples|IT
Genua|Genoa|IT
Bozen|Bolzano|IT
Trient|Trento|IT
Triest|Trieste|IT
Prag|Prague|CZ
Brünn|Brno|CZ
Warschau|Warsaw|PL
Krakau|Kraków|PL
Danzig|Gdansk|PL
Breslau|Wroclaw|PL
Posen|Poznan|PL
Stettin|Szczecin|PL
Kopenhagen|Copenhagen|DK
Gothenburg|Göteborg|SE
Lissabon|Lisbon|PT
Sevilla|Seville|ES
Saragossa|Zaragoza|ES
Athen|Athens|GR
Bukarest|Bucharest|RO
Belgrad|Belgrade|RS
Laibach|Ljubljana|SI
Pressburg|Bratislava|SK
Brüssel|Brussels|BE
Ghent|Gent|BE
Bruges|Brugge|BE
Brügge|Brugge|BE
Lüttich|Liege|BE
Luxemburg|Luxembourg|LU
Den Haag|The Hague|NL
Nizza|Nice|FR
Straßburg|Strasbourg|FR
Moskau|Moscow|RU
Sankt Petersburg|St. Petersburg|RU
Kiew|Kyiv|UA
Kiev|Kyiv|UA
Odesa|Odessa|UA
Kairo|Cairo|EG
Algier|Algiers|DZ
Tripolis|Tripoli|LY
Damaskus|Damascus|SY
Bagdad|Baghdad|IQ
Teheran|Tehran|IR
Peking|Beijing|CN
Schanghai|Shanghai|CN
Tokio|Tokyo|JP
Singapur|Singapore|SG
Havanna|Havana|CU
Nikosia|Nicosia|CY
Mexiko-Stadt|Mexico City|MX
Kapstadt|Cape Town|ZA
`;
