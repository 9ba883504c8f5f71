PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE answers (
    lot         INTEGER PRIMARY KEY REFERENCES lots (id),
    revision    INTEGER NOT NULL,
    decision    TEXT    NOT NULL CONSTRAINT decision CHECK (decision IN ('bid', 'do_not_bid')),
    walk_away   INTEGER,
    binding     TEXT    NOT NULL,
    loss_chance REAL    NOT NULL,
    mean_profit REAL    NOT NULL,
    per_hour    REAL,
    noted_at    TEXT    NOT NULL
, said TEXT NOT NULL DEFAULT '{}' CONSTRAINT said CHECK (json_valid(said))) STRICT;
INSERT INTO answers VALUES(1,1,'bid',630000,'max_loss_chance',0.14,2100.25,41.5,'2026-11-20T07:30:00Z','{"plan":"rebuild","win_chance":0.25,"expected_gain":310.5}');
CREATE TABLE documents (
    lot  INTEGER NOT NULL REFERENCES lots (id),
    part TEXT    NOT NULL,
    page INTEGER NOT NULL,
    body TEXT    NOT NULL,
    PRIMARY KEY (lot, part, page)
) STRICT;
INSERT INTO documents VALUES(1,'currency',0,'"USD"');
INSERT INTO documents VALUES(1,'valued_on',0,'"2026-11-20"');
INSERT INTO documents VALUES(1,'buying',0,'{"bid_steps":[{"from":0,"step":2500},{"from":100000,"step":5000}],"fees":[{"mode":"whole","name":"Buyer''s fee","rows":[{"flat":10000,"from":0,"maximum":null,"minimum":null,"percent":"0"},{"flat":15000,"from":100000,"maximum":null,"minimum":null,"percent":"0.02"},{"flat":0,"from":500000,"maximum":null,"minimum":40000,"percent":"0.08"}]}],"fixed":[{"amount":7500,"name":"Gate"}],"freight":{"high":240,"likely":180,"low":150},"payment_surcharge":"0.025","storage":{"days":{"high":6,"likely":3,"low":2},"free_days":3,"per_day":30},"tax":{"base":"hammer_and_fees","rate":"0.0625"}}');
INSERT INTO documents VALUES(1,'rules',0,'{"max_cash":2000000,"max_days":150,"max_loss_chance":0.15,"max_worst_tenth_loss":250000,"min_margin":0.12,"min_per_hour":4000,"min_profit":150000}');
INSERT INTO documents VALUES(1,'findings',0,'{"rust_below":"no","wheel_out_of_place":"yes"}');
INSERT INTO documents VALUES(1,'labour',0,'{"rates":{"body":35,"electrical":35,"mechanical":35,"paint":35,"structure":35,"trim":35}}');
INSERT INTO documents VALUES(1,'run',0,'{"scenarios":4096,"seed":7,"winners_allowance":false}');
INSERT INTO documents VALUES(1,'selling',0,'{"flat":250,"percent":0}');
INSERT INTO documents VALUES(1,'time',0,'{"capital_rate":0.1,"days_to_sell":{"high":60,"likely":21,"low":7},"holding_per_day":6,"hours_per_week":30,"inspection_queue_days":{"high":35,"likely":14,"low":7}}');
INSERT INTO documents VALUES(1,'lines',0,'[{"area":"12","caution":"","chance":0.9,"edited":false,"hours":{"body":{"high":3,"likely":1.5,"low":1}},"id":"r1","job":"Replace bumper cover","loading":null,"materials":{"high":60,"likely":30,"low":20},"operation":"replace","outside":{"high":0,"likely":0,"low":0},"parts":[{"critical":true,"fallback":{"hours":{"high":0,"likely":0,"low":0},"lead_days":{"high":21,"likely":21,"low":21},"price":{"high":600,"likely":600,"low":600}},"name":"bumper cover","options":[{"chance":0.7,"core_back":{"high":0,"likely":0,"low":0},"extra_hours":{"high":0,"likely":0,"low":0},"freight":{"high":40,"likely":40,"low":40},"lead_days":{"high":10,"likely":3,"low":1},"price":{"high":260,"likely":180,"low":120},"quoted":"","source":"used"}]}],"removed":false,"why":""}]');
INSERT INTO documents VALUES(1,'market',0,'{"hammer_guess":{"high":7500,"likely":5200,"low":3500},"rivals":4}');
INSERT INTO documents VALUES(1,'resale',0,'{"asked_to_sold":{"high":1,"likely":0.95,"low":0.9},"brand_discount":{"high":0.45,"likely":0.28,"low":0.15},"comparables":"","guess":{"high":18500,"likely":16500,"low":14000},"rows":null,"subject":{"brand":"rebuilt","condition":3,"more":null,"sale_date":"","trim":"LX"}}');
INSERT INTO documents VALUES(1,'photos',0,'null');
INSERT INTO documents VALUES(1,'build',0,'{"charges":null,"done":null,"hours":null,"receipts":null,"risks":null}');
INSERT INTO documents VALUES(1,'lot',0,'{"airbags_deployed":["front"],"condition":"starts","keys":true,"loss":["collision"],"make":"Orlan","model":"Tessel","model_year":2019,"number":"14","odometer":61200,"odometer_status":"actual","odometer_unit":"mi","sale":"Harrow Flats yard","sale_date":"2026-11-28","title":{"brands":null,"document":"salvage","issued_in":"US-XX","register_in":"US-XX"},"trim":"GT","vin":""}');
INSERT INTO documents VALUES(1,'damage',0,'[{"area":"12","depth":"bolted","extent":"functional","note":"bumper, \"hood\""},{"area":"undercarriage","depth":"structure","extent":"minor","note":""}]');
INSERT INTO documents VALUES(1,'hidden',0,'{"risks":null,"shared_loading":0,"use_catalogue":false}');
INSERT INTO documents VALUES(1,'repair',0,'{"lines":null,"use_catalogue":false}');
INSERT INTO documents VALUES(1,'risks',0,'[{"caution":"","chance":{"a":2,"b":6},"cost":{"high":900,"likely":300,"low":150},"days":{"high":2,"likely":2,"low":2},"findings":null,"hours":{"structure":{"high":8,"likely":3,"low":1}},"id":"h1","loading":0.25,"name":"Control arm mount torn","removed":false,"why":""}]');
INSERT INTO documents VALUES(1,'rows',0,'[{"condition":null,"date":"2026-11-01","distance":null,"excluded":true,"id":"c2","kind":"asked","make":"Orlan","mileage":70000,"mileage_unit":"km","model":"Tessel","model_year":2020,"more":null,"note":"","price":1725050,"source":"","title":"rebuilt","trim":""}]');
INSERT INTO documents VALUES(1,'format',0,'"walkline-case/1"');
INSERT INTO documents VALUES(2,'lot',0,'{"airbags_deployed":["front"],"condition":"starts","keys":true,"loss":["collision"],"make":"Orlan","model":"Tessel","model_year":2019,"number":"14","odometer":61200,"odometer_status":"actual","odometer_unit":"mi","sale":"Harrow Flats yard","sale_date":"2026-11-28","title":{"brands":null,"document":"salvage","issued_in":"US-XX","register_in":"US-XX"},"trim":"LX","vin":""}');
INSERT INTO documents VALUES(2,'run',0,'{"scenarios":4096,"seed":7,"winners_allowance":false}');
INSERT INTO documents VALUES(2,'valued_on',0,'"2026-11-20"');
INSERT INTO documents VALUES(2,'buying',0,'{"bid_steps":[{"from":0,"step":2500},{"from":100000,"step":5000}],"fees":[{"mode":"whole","name":"Buyer''s fee","rows":[{"flat":10000,"from":0,"maximum":null,"minimum":null,"percent":"0"},{"flat":15000,"from":100000,"maximum":null,"minimum":null,"percent":"0.02"},{"flat":0,"from":500000,"maximum":null,"minimum":40000,"percent":"0.08"}]}],"fixed":[{"amount":7500,"name":"Gate"}],"freight":{"high":240,"likely":180,"low":150},"payment_surcharge":"0.025","storage":{"days":{"high":6,"likely":3,"low":2},"free_days":3,"per_day":30},"tax":{"base":"hammer_and_fees","rate":"0.0625"}}');
INSERT INTO documents VALUES(2,'findings',0,'{"rust_below":"no","wheel_out_of_place":"yes"}');
INSERT INTO documents VALUES(2,'labour',0,'{"rates":{"body":35,"electrical":35,"mechanical":35,"paint":35,"structure":35,"trim":35}}');
INSERT INTO documents VALUES(2,'lines',0,'[{"area":"12","caution":"","chance":0.9,"edited":false,"hours":{"body":{"high":3,"likely":1.5,"low":1}},"id":"r1","job":"Replace bumper cover","loading":null,"materials":{"high":60,"likely":30,"low":20},"operation":"replace","outside":{"high":0,"likely":0,"low":0},"parts":[{"critical":true,"fallback":{"hours":{"high":0,"likely":0,"low":0},"lead_days":{"high":21,"likely":21,"low":21},"price":{"high":600,"likely":600,"low":600}},"name":"bumper cover","options":[{"chance":0.7,"core_back":{"high":0,"likely":0,"low":0},"extra_hours":{"high":0,"likely":0,"low":0},"freight":{"high":40,"likely":40,"low":40},"lead_days":{"high":10,"likely":3,"low":1},"price":{"high":260,"likely":180,"low":120},"quoted":"","source":"used"}]}],"removed":false,"why":""}]');
INSERT INTO documents VALUES(2,'format',0,'"walkline-case/1"');
INSERT INTO documents VALUES(2,'currency',0,'"USD"');
INSERT INTO documents VALUES(2,'damage',0,'[{"area":"12","depth":"bolted","extent":"functional","note":"bumper, \"hood\""},{"area":"undercarriage","depth":"structure","extent":"minor","note":""}]');
INSERT INTO documents VALUES(2,'repair',0,'{"lines":null,"use_catalogue":false}');
INSERT INTO documents VALUES(2,'rules',0,'{"max_cash":2000000,"max_days":150,"max_loss_chance":0.15,"max_worst_tenth_loss":250000,"min_margin":0.12,"min_per_hour":4000,"min_profit":150000}');
INSERT INTO documents VALUES(2,'selling',0,'{"flat":250,"percent":0}');
INSERT INTO documents VALUES(2,'time',0,'{"capital_rate":0.1,"days_to_sell":{"high":60,"likely":21,"low":7},"holding_per_day":6,"hours_per_week":30,"inspection_queue_days":{"high":35,"likely":14,"low":7}}');
INSERT INTO documents VALUES(2,'photos',0,'[{"area":"12","caption":"grille","hash":"0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a","height":3024,"kind":"jpeg","name":"IMG 1.JPG","stage":"before","taken":"2026-01-02","width":4032},{"area":"","caption":"","hash":"0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b","height":30,"kind":"png","name":"b.png","stage":"after","taken":"","width":20}]');
INSERT INTO documents VALUES(2,'hidden',0,'{"risks":null,"shared_loading":0,"use_catalogue":false}');
INSERT INTO documents VALUES(2,'market',0,'{"hammer_guess":{"high":7500,"likely":5200,"low":3500},"rivals":4}');
INSERT INTO documents VALUES(2,'resale',0,'{"asked_to_sold":{"high":1,"likely":0.95,"low":0.9},"brand_discount":{"high":0.45,"likely":0.28,"low":0.15},"comparables":"","guess":{"high":18500,"likely":16500,"low":14000},"rows":null,"subject":{"brand":"rebuilt","condition":3,"more":null,"sale_date":"","trim":"LX"}}');
INSERT INTO documents VALUES(2,'risks',0,'[{"caution":"","chance":{"a":2,"b":6},"cost":{"high":900,"likely":300,"low":150},"days":{"high":2,"likely":2,"low":2},"findings":null,"hours":{"structure":{"high":8,"likely":3,"low":1}},"id":"h1","loading":0.25,"name":"Control arm mount torn","removed":false,"why":""}]');
INSERT INTO documents VALUES(2,'rows',0,'[{"condition":4,"date":"2026-10-02","distance":12.5,"excluded":false,"id":"c1","kind":"sold","make":"Orlan","mileage":58000,"mileage_unit":"mi","model":"Tessel","model_year":2019,"more":{"fuel":"petrol"},"note":"one owner","price":1650000,"source":"yard list","title":"clear","trim":"LX"},{"condition":null,"date":"2026-11-01","distance":null,"excluded":true,"id":"c2","kind":"asked","make":"Orlan","mileage":70000,"mileage_unit":"km","model":"Tessel","model_year":2020,"more":null,"note":"","price":1725050,"source":"","title":"rebuilt","trim":""}]');
INSERT INTO documents VALUES(2,'build',0,'{"charges":[{"amount":7500,"name":"Gate"}],"dates":{"bought":"2026-01-01","finished":"2026-02-01","home":"2026-01-02","inspected":"2026-02-10","listed":"2026-02-11","sold":"2026-02-23","started":"2026-01-03"},"done":["r1"],"hammer":420000,"hours":[{"date":"2026-01-06","hours":2.5,"line":"r1","trade":"body","what":"fit"}],"imported":{"as":"7","row":"r"},"note":"n","otherwise":{"as_is":{"high":3,"likely":2,"low":1},"part_out":{"high":3,"likely":2,"low":1},"part_out_hours":{"high":3,"likely":2,"low":1}},"outcome":"sold","receipts":[{"amount":18000,"date":"2026-01-05","donor":"1ABCD23E4FG567890","file":"hood.pdf","hash":"00000000000000000000000000000000000000000000000000000000000000ff","kind":"part","line":"r1","source":"used","trade":"body","what":"Hood"}],"risks":[{"risk":"h1","state":"found"}],"sale":{"brand":"rebuilt","days":12,"first_asked":1190000,"price":1150000}}');
INSERT INTO documents VALUES(3,'build',0,'{"outcome":"","hammer":null,"dates":{"bought":"","home":"","started":"","finished":"","inspected":"","listed":"","sold":""},"sale":{"price":null,"first_asked":null,"days":null,"brand":""},"otherwise":{"as_is":null,"part_out":null,"part_out_hours":null},"note":"","charges":null,"receipts":null,"hours":null,"risks":null,"done":null,"imported":{"as":"","row":""}}');
INSERT INTO documents VALUES(3,'format',0,'"walkline-case/1"');
INSERT INTO documents VALUES(3,'currency',0,'""');
INSERT INTO documents VALUES(3,'valued_on',0,'""');
INSERT INTO documents VALUES(3,'lot',0,'{"number":"","sale":"","sale_date":"","vin":"","model_year":0,"make":"","model":"","trim":"","odometer":null,"odometer_unit":"mi","odometer_status":"unknown","title":{"issued_in":"","document":"","brands":null,"register_in":""},"loss":null,"condition":"unknown","keys":null,"airbags_deployed":null}');
INSERT INTO documents VALUES(3,'findings',0,'null');
INSERT INTO documents VALUES(3,'repair',0,'{"use_catalogue":true,"lines":null}');
INSERT INTO documents VALUES(3,'hidden',0,'{"use_catalogue":true,"risks":null,"shared_loading":0.3}');
INSERT INTO documents VALUES(3,'resale',0,'{"comparables":"","rows":null,"subject":{"trim":"","condition":null,"brand":"","sale_date":"","more":null},"brand_discount":{"low":0.15,"likely":0.28,"high":0.45},"asked_to_sold":{"low":0.9,"likely":0.95,"high":1},"guess":null}');
INSERT INTO documents VALUES(3,'buying',0,'{"bid_steps":null,"fees":null,"fixed":null,"payment_surcharge":"0","tax":{"rate":"0","base":"hammer"},"freight":{"low":0,"likely":0,"high":0},"storage":{"per_day":0,"free_days":0,"days":{"low":0,"likely":0,"high":0}}}');
INSERT INTO documents VALUES(3,'time',0,'{"hours_per_week":30,"inspection_queue_days":{"low":0,"likely":0,"high":0},"days_to_sell":{"low":0,"likely":0,"high":0},"holding_per_day":0,"capital_rate":0}');
INSERT INTO documents VALUES(3,'selling',0,'{"percent":0,"flat":0}');
INSERT INTO documents VALUES(3,'labour',0,'{"rates":null}');
INSERT INTO documents VALUES(3,'market',0,'{"rivals":0,"hammer_guess":null}');
INSERT INTO documents VALUES(3,'rules',0,'{"min_profit":null,"min_margin":null,"max_loss_chance":null,"max_worst_tenth_loss":null,"min_per_hour":null,"max_cash":null,"max_days":null}');
INSERT INTO documents VALUES(3,'run',0,'{"scenarios":16384,"seed":1,"winners_allowance":true}');
INSERT INTO documents VALUES(3,'factors',0,'null');
INSERT INTO documents VALUES(3,'damage',0,'null');
INSERT INTO documents VALUES(3,'lines',0,'null');
INSERT INTO documents VALUES(3,'risks',0,'null');
INSERT INTO documents VALUES(3,'rows',0,'null');
INSERT INTO documents VALUES(3,'photos',0,'null');
INSERT INTO documents VALUES(4,'build',0,'{"outcome":"","hammer":420000,"dates":{"bought":"","home":"","started":"","finished":"","inspected":"","listed":"","sold":""},"sale":{"price":null,"first_asked":null,"days":null,"brand":""},"otherwise":{"as_is":null,"part_out":null,"part_out_hours":null},"note":"","charges":null,"receipts":null,"hours":null,"risks":null,"done":null,"imported":{"as":"","row":""}}');
INSERT INTO documents VALUES(4,'format',0,'"walkline-case/1"');
INSERT INTO documents VALUES(4,'currency',0,'"USD"');
INSERT INTO documents VALUES(4,'valued_on',0,'"2026-11-20"');
INSERT INTO documents VALUES(4,'lot',0,'{"number":"14","sale":"Harrow Flats yard","sale_date":"2026-11-28","vin":"","model_year":2019,"make":"Orlan","model":"Tessel","trim":"LX","odometer":61200,"odometer_unit":"mi","odometer_status":"actual","title":{"issued_in":"US-XX","document":"salvage","brands":null,"register_in":"US-XX"},"loss":["collision"],"condition":"starts","keys":true,"airbags_deployed":["front"]}');
INSERT INTO documents VALUES(4,'findings',0,'{"rust_below":"no","wheel_out_of_place":"yes"}');
INSERT INTO documents VALUES(4,'repair',0,'{"use_catalogue":false,"lines":null}');
INSERT INTO documents VALUES(4,'hidden',0,'{"use_catalogue":false,"risks":null,"shared_loading":0}');
INSERT INTO documents VALUES(4,'resale',0,'{"comparables":"","rows":null,"subject":{"trim":"LX","condition":3,"brand":"rebuilt","sale_date":"","more":null},"brand_discount":{"low":0.15,"likely":0.28,"high":0.45},"asked_to_sold":{"low":0.9,"likely":0.95,"high":1},"guess":{"low":14000,"likely":16500,"high":18500}}');
INSERT INTO documents VALUES(4,'buying',0,'{"bid_steps":[{"from":0,"step":2500},{"from":100000,"step":5000}],"fees":[{"name":"Buyer''s fee","mode":"whole","rows":[{"from":0,"flat":10000,"percent":"0","minimum":null,"maximum":null},{"from":100000,"flat":15000,"percent":"0.02","minimum":null,"maximum":null},{"from":500000,"flat":0,"percent":"0.08","minimum":40000,"maximum":null}]}],"fixed":[{"name":"Gate","amount":7500}],"payment_surcharge":"0.025","tax":{"rate":"0.0625","base":"hammer_and_fees"},"freight":{"low":150,"likely":180,"high":240},"storage":{"per_day":30,"free_days":3,"days":{"low":2,"likely":3,"high":6}}}');
INSERT INTO documents VALUES(4,'time',0,'{"hours_per_week":30,"inspection_queue_days":{"low":7,"likely":14,"high":35},"days_to_sell":{"low":7,"likely":21,"high":60},"holding_per_day":6,"capital_rate":0.1}');
INSERT INTO documents VALUES(4,'selling',0,'{"percent":0,"flat":250}');
INSERT INTO documents VALUES(4,'labour',0,'{"rates":{"body":35,"electrical":35,"mechanical":35,"paint":35,"structure":35,"trim":35}}');
INSERT INTO documents VALUES(4,'market',0,'{"rivals":4,"hammer_guess":{"low":3500,"likely":5200,"high":7500}}');
INSERT INTO documents VALUES(4,'rules',0,'{"min_profit":150000,"min_margin":0.12,"max_loss_chance":0.15,"max_worst_tenth_loss":250000,"min_per_hour":4000,"max_cash":2000000,"max_days":150}');
INSERT INTO documents VALUES(4,'run',0,'{"scenarios":4096,"seed":7,"winners_allowance":false}');
INSERT INTO documents VALUES(4,'factors',0,'null');
INSERT INTO documents VALUES(4,'damage',0,'[{"area":"12","extent":"functional","depth":"bolted","note":"bent"},{"area":"undercarriage","extent":"minor","depth":"structure","note":""}]');
INSERT INTO documents VALUES(4,'lines',0,'[{"id":"r1","job":"Replace bumper cover","area":"12","operation":"replace","chance":0.9,"hours":{"body":{"low":1,"likely":1.5,"high":3}},"materials":{"low":20,"likely":30,"high":60},"outside":{"low":0,"likely":0,"high":0},"parts":[{"name":"bumper cover","critical":true,"options":[{"source":"used","price":{"low":120,"likely":180,"high":260},"freight":{"low":40,"likely":40,"high":40},"lead_days":{"low":1,"likely":3,"high":10},"chance":0.7,"extra_hours":{"low":0,"likely":0,"high":0},"core_back":{"low":0,"likely":0,"high":0},"quoted":""}],"fallback":{"price":{"low":600,"likely":600,"high":600},"lead_days":{"low":21,"likely":21,"high":21},"hours":{"low":0,"likely":0,"high":0}}}],"loading":null,"why":"","caution":"","edited":false,"removed":false}]');
INSERT INTO documents VALUES(4,'risks',0,'[{"id":"h1","name":"Control arm mount torn","chance":{"a":2,"b":6},"cost":{"low":150,"likely":300,"high":900},"hours":{"structure":{"low":1,"likely":3,"high":8}},"days":{"low":2,"likely":2,"high":2},"loading":0.25,"findings":null,"why":"","caution":"","removed":false}]');
INSERT INTO documents VALUES(4,'rows',0,'[{"id":"c1","price":1650000,"kind":"sold","date":"2026-10-02","model_year":2019,"make":"Orlan","model":"Tessel","trim":"LX","mileage":58000,"mileage_unit":"mi","title":"clear","distance":12.5,"condition":4,"note":"one owner","source":"yard list","more":{"fuel":"petrol"},"excluded":false},{"id":"c2","price":1725050,"kind":"asked","date":"2026-11-01","model_year":2020,"make":"Orlan","model":"Tessel","trim":"","mileage":70000,"mileage_unit":"km","title":"rebuilt","distance":null,"condition":null,"note":"","source":"","more":null,"excluded":true}]');
INSERT INTO documents VALUES(4,'photos',0,'null');
CREATE TABLE factors (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    decided_at TEXT    NOT NULL,
    decision   TEXT    NOT NULL CONSTRAINT decision CHECK (decision IN ('accepted', 'refused', 'restored')),
    factor     TEXT    NOT NULL,
    words      TEXT    NOT NULL,
    before     TEXT    NOT NULL CONSTRAINT before CHECK (json_valid(before)),
    after      TEXT    NOT NULL CONSTRAINT after CHECK (json_valid(after))
) STRICT;
INSERT INTO factors VALUES(1,'2026-11-25T13:48:04.382846368Z','accepted','f','w','{}','{"a":1}');
INSERT INTO factors VALUES(2,'2026-11-26T09:00:00Z','accepted','outside','1 to 1.2','{"a":1}','{"a":1,"outside":{"factor":1.2,"from":9,"log_sd":0.1,"when":"2026-11-26"}}');
INSERT INTO factors VALUES(3,'2026-11-26T09:00:00Z','restored','outside','Taken back: 1 to 1.2','{"a":1,"outside":{"factor":1.2,"from":9,"log_sd":0.1,"when":"2026-11-26"}}','{"a":1}');
CREATE TABLE forecasts (
    prediction INTEGER PRIMARY KEY REFERENCES predictions (id),
    body       TEXT NOT NULL CONSTRAINT body CHECK (json_valid(body))
) STRICT;
INSERT INTO forecasts VALUES(2,'{"x":1}');
INSERT INTO forecasts VALUES(3,'{"on":"","engine":"3","factors":{"hours":null,"parts":null,"materials":null,"outside":null,"hidden":null,"resale":null,"asked_to_sold":null,"brand_discount":null,"days_to_sell":null,"risks":null,"shared_loading":null,"half_life_days":0},"walk_away":null,"at":0,"resale":{"mean":0,"q":null},"profit":{"mean":0,"q":null},"cost":{"mean":0,"q":null},"hours":{"mean":0,"q":null},"days":{"mean":0,"q":null},"loss_chance":0,"items":null,"risks":null,"terms":{"asked_to_sold":0,"asked_share":0,"brand":"","brand_share":0,"days_to_sell":0,"days_sd":0,"rates":null,"rate":0,"holding_a_day":0,"capital_rate":0,"sell_percent":0,"resale_allowed":0,"cost_allowed":0},"money":{"resale":0,"selling":0,"repair":0,"hidden":0,"labour":0,"freight":0,"storage":0,"holding":0,"capital":0,"allowance":0,"fees":0},"invoice":null}');
CREATE TABLE lots (
    id              INTEGER PRIMARY KEY AUTOINCREMENT,
    archived        INTEGER NOT NULL DEFAULT 0 CONSTRAINT archived CHECK (archived IN (0, 1)),
    removed_at      TEXT,
    saved_at        TEXT    NOT NULL,
    revision        INTEGER NOT NULL DEFAULT 0,
    currency        TEXT    NOT NULL,
    number          TEXT    NOT NULL,
    sale            TEXT    NOT NULL,
    sale_date       TEXT    NOT NULL CONSTRAINT sale_date CHECK (sale_date = '' OR sale_date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    vin             TEXT    NOT NULL,
    model_year      INTEGER NOT NULL,
    make            TEXT    NOT NULL,
    model           TEXT    NOT NULL,
    trim            TEXT    NOT NULL,
    state TEXT NOT NULL DEFAULT '', imported_as TEXT NOT NULL DEFAULT '', imported_row TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO lots VALUES(1,0,NULL,'2026-11-20T07:30:00Z',1,'USD','14','Harrow Flats yard','2026-11-28','',2019,'Orlan','Tessel','GT','bid','','');
INSERT INTO lots VALUES(2,0,NULL,'2026-11-25T13:48:04.375863379Z',0,'USD','14','Harrow Flats yard','2026-11-28','',2019,'Orlan','Tessel','LX','won','7','r');
INSERT INTO lots VALUES(3,0,'2026-11-26T09:00:00Z','2026-11-26T09:00:00Z',0,'','','','','',0,'','','','to look at','','');
INSERT INTO lots VALUES(4,0,NULL,'2026-11-26T09:00:00Z',4,'USD','14','Harrow Flats yard','2026-11-28','',2019,'Orlan','Tessel','LX','won','','');
CREATE TABLE predictions (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    lot        INTEGER NOT NULL REFERENCES lots (id),
    frozen_at  TEXT    NOT NULL,
    case_file  TEXT    NOT NULL CONSTRAINT case_file CHECK (json_valid(case_file)),
    answer     TEXT    NOT NULL CONSTRAINT answer CHECK (json_valid(answer)),
    factors    TEXT    NOT NULL CONSTRAINT factors CHECK (json_valid(factors)),
    seed       INTEGER NOT NULL,
    engine     TEXT    NOT NULL
) STRICT;
INSERT INTO predictions VALUES(1,1,'2026-11-20T07:30:00Z','{
  "format": "walkline-case/1",
  "currency": "USD",
  "valued_on": "2026-11-20",
  "lot": {
    "number": "14",
    "sale": "Harrow Flats yard",
    "sale_date": "2026-11-28",
    "model_year": 2019,
    "make": "Orlan",
    "model": "Tessel",
    "trim": "LX",
    "odometer": 61200,
    "odometer_unit": "mi",
    "odometer_status": "actual",
    "title": {
      "issued_in": "US-XX",
      "document": "salvage",
      "register_in": "US-XX"
    },
    "loss": [
      "collision"
    ],
    "condition": "starts",
    "keys": true,
    "airbags_deployed": [
      "front"
    ]
  },
  "damage": [
    {
      "area": "12",
      "extent": "functional",
      "depth": "bolted",
      "note": "bumper, \"hood\""
    },
    {
      "area": "undercarriage",
      "extent": "minor",
      "depth": "structure"
    }
  ],
  "findings": {
    "rust_below": "no",
    "wheel_out_of_place": "yes"
  },
  "repair": {
    "use_catalogue": false,
    "lines": [
      {
        "id": "r1",
        "job": "Replace bumper cover",
        "area": "12",
        "operation": "replace",
        "chance": 0.9,
        "hours": {
          "body": {
            "low": 1,
            "likely": 1.5,
            "high": 3
          }
        },
        "materials": {
          "low": 20.00,
          "likely": 30.00,
          "high": 60.00
        },
        "outside": 0.00,
        "parts": [
          {
            "name": "bumper cover",
            "critical": true,
            "options": [
              {
                "source": "used",
                "price": {
                  "low": 120.00,
                  "likely": 180.00,
                  "high": 260.00
                },
                "freight": 40.00,
                "lead_days": {
                  "low": 1,
                  "likely": 3,
                  "high": 10
                },
                "chance": 0.7,
                "extra_hours": 0,
                "core_back": 0.00
              }
            ],
            "fallback": {
              "price": 600.00,
              "lead_days": 21,
              "hours": 0
            }
          }
        ],
        "edited": false,
        "removed": false
      }
    ]
  },
  "hidden": {
    "use_catalogue": false,
    "risks": [
      {
        "id": "h1",
        "name": "Control arm mount torn",
        "chance": {
          "a": 2,
          "b": 6
        },
        "cost": {
          "low": 150.00,
          "likely": 300.00,
          "high": 900.00
        },
        "hours": {
          "structure": {
            "low": 1,
            "likely": 3,
            "high": 8
          }
        },
        "days": 2,
        "loading": 0.25,
        "removed": false
      }
    ],
    "shared_loading": 0
  },
  "resale": {
    "rows": [
      {
        "id": "c1",
        "price": "16500.00",
        "kind": "sold",
        "date": "2026-10-02",
        "model_year": 2019,
        "make": "Orlan",
        "model": "Tessel",
        "trim": "LX",
        "mileage": 58000,
        "mileage_unit": "mi",
        "title": "clear",
        "distance": 12.5,
        "condition": 4,
        "note": "one owner",
        "source": "yard list",
        "more": {
          "fuel": "petrol"
        },
        "excluded": false
      },
      {
        "id": "c2",
        "price": "17250.50",
        "kind": "asked",
        "date": "2026-11-01",
        "model_year": 2020,
        "make": "Orlan",
        "model": "Tessel",
        "mileage": 70000,
        "mileage_unit": "km",
        "title": "rebuilt",
        "excluded": true
      }
    ],
    "subject": {
      "trim": "LX",
      "condition": 3,
      "brand": "rebuilt"
    },
    "brand_discount": {
      "low": 0.15,
      "likely": 0.28,
      "high": 0.45
    },
    "asked_to_sold": {
      "low": 0.9,
      "likely": 0.95,
      "high": 1
    },
    "guess": {
      "low": 14000.00,
      "likely": 16500.00,
      "high": 18500.00
    }
  },
  "buying": {
    "bid_steps": [
      {
        "from": "0.00",
        "step": "25.00"
      },
      {
        "from": "1000.00",
        "step": "50.00"
      }
    ],
    "fees": [
      {
        "name": "Buyer''s fee",
        "mode": "whole",
        "rows": [
          {
            "from": "0.00",
            "flat": "100.00",
            "percent": 0
          },
          {
            "from": "1000.00",
            "flat": "150.00",
            "percent": 0.02
          },
          {
            "from": "5000.00",
            "flat": "0.00",
            "percent": 0.08,
            "minimum": "400.00"
          }
        ]
      }
    ],
    "fixed": [
      {
        "name": "Gate",
        "amount": "75.00"
      }
    ],
    "payment_surcharge": 0.025,
    "tax": {
      "rate": 0.0625,
      "base": "hammer_and_fees"
    },
    "freight": {
      "low": 150.00,
      "likely": 180.00,
      "high": 240.00
    },
    "storage": {
      "per_day": 30.00,
      "free_days": 3,
      "days": {
        "low": 2,
        "likely": 3,
        "high": 6
      }
    }
  },
  "time": {
    "hours_per_week": 30,
    "inspection_queue_days": {
      "low": 7,
      "likely": 14,
      "high": 35
    },
    "days_to_sell": {
      "low": 7,
      "likely": 21,
      "high": 60
    },
    "holding_per_day": 6.00,
    "capital_rate": 0.1
  },
  "selling": {
    "percent": 0,
    "flat": 250.00
  },
  "labour": {
    "rates": {
      "body": 35.00,
      "electrical": 35.00,
      "mechanical": 35.00,
      "paint": 35.00,
      "structure": 35.00,
      "trim": 35.00
    }
  },
  "market": {
    "rivals": 4,
    "hammer_guess": {
      "low": 3500.00,
      "likely": 5200.00,
      "high": 7500.00
    }
  },
  "rules": {
    "min_profit": "1500.00",
    "min_margin": 0.12,
    "max_loss_chance": 0.15,
    "max_worst_tenth_loss": "2500.00",
    "min_per_hour": "40.00",
    "max_cash": "20000.00",
    "max_days": 150
  },
  "run": {
    "scenarios": 4096,
    "seed": 7,
    "winners_allowance": false
  }
}
','{
  "format": "walkline-answer/1",
  "currency": "USD",
  "decision": "bid",
  "walk_away": "6300.00",
  "binding_rule": "max_loss_chance",
  "reasons": [],
  "warnings": [],
  "ceilings": {},
  "resale": {
    "mean": 0,
    "p10": 0,
    "p50": 0,
    "p90": 0,
    "rows_used": 0,
    "adjusted": []
  },
  "repair": {
    "mean": 0,
    "p10": 0,
    "p90": 0,
    "lines": []
  },
  "hidden": {
    "mean": 0,
    "p10": 0,
    "p90": 0,
    "risks": []
  },
  "days": {
    "mean": 0,
    "p10": 0,
    "p90": 0
  },
  "hours": {
    "mean": 0,
    "p10": 0,
    "p90": 0
  },
  "acquisition": {
    "bid": "0.00",
    "lines": [],
    "total": "0.00"
  },
  "profit": {
    "mean": 2100.25,
    "p05": 0,
    "p10": 0,
    "p50": 0,
    "p90": 0,
    "loss_chance": 0.14,
    "worst_tenth_mean": 0,
    "margin": 0,
    "per_hour": 41.5
  },
  "ladder": [],
  "waterfall": [],
  "drivers": [],
  "checklist": [],
  "own_labour": {
    "mean": 0,
    "p10": 0,
    "p90": 0
  }
}
','{}',7,'1');
INSERT INTO predictions VALUES(2,2,'2026-11-25T13:48:04.379734524Z','{
  "format": "walkline-case/1",
  "currency": "USD",
  "valued_on": "2026-11-20",
  "lot": {
    "number": "14",
    "sale": "Harrow Flats yard",
    "sale_date": "2026-11-28",
    "model_year": 2019,
    "make": "Orlan",
    "model": "Tessel",
    "trim": "LX",
    "odometer": 61200,
    "odometer_unit": "mi",
    "odometer_status": "actual",
    "title": {
      "issued_in": "US-XX",
      "document": "salvage",
      "register_in": "US-XX"
    },
    "loss": [
      "collision"
    ],
    "condition": "starts",
    "keys": true,
    "airbags_deployed": [
      "front"
    ]
  },
  "damage": [
    {
      "area": "12",
      "extent": "functional",
      "depth": "bolted",
      "note": "bumper, \"hood\""
    },
    {
      "area": "undercarriage",
      "extent": "minor",
      "depth": "structure"
    }
  ],
  "findings": {
    "rust_below": "no",
    "wheel_out_of_place": "yes"
  },
  "repair": {
    "use_catalogue": false,
    "lines": [
      {
        "id": "r1",
        "job": "Replace bumper cover",
        "area": "12",
        "operation": "replace",
        "chance": 0.9,
        "hours": {
          "body": {
            "low": 1,
            "likely": 1.5,
            "high": 3
          }
        },
        "materials": {
          "low": 20.00,
          "likely": 30.00,
          "high": 60.00
        },
        "outside": 0.00,
        "parts": [
          {
            "name": "bumper cover",
            "critical": true,
            "options": [
              {
                "source": "used",
                "price": {
                  "low": 120.00,
                  "likely": 180.00,
                  "high": 260.00
                },
                "freight": 40.00,
                "lead_days": {
                  "low": 1,
                  "likely": 3,
                  "high": 10
                },
                "chance": 0.7,
                "extra_hours": 0,
                "core_back": 0.00
              }
            ],
            "fallback": {
              "price": 600.00,
              "lead_days": 21,
              "hours": 0
            }
          }
        ],
        "edited": false,
        "removed": false
      }
    ]
  },
  "hidden": {
    "use_catalogue": false,
    "risks": [
      {
        "id": "h1",
        "name": "Control arm mount torn",
        "chance": {
          "a": 2,
          "b": 6
        },
        "cost": {
          "low": 150.00,
          "likely": 300.00,
          "high": 900.00
        },
        "hours": {
          "structure": {
            "low": 1,
            "likely": 3,
            "high": 8
          }
        },
        "days": 2,
        "loading": 0.25,
        "removed": false
      }
    ],
    "shared_loading": 0
  },
  "resale": {
    "rows": [
      {
        "id": "c1",
        "price": "16500.00",
        "kind": "sold",
        "date": "2026-10-02",
        "model_year": 2019,
        "make": "Orlan",
        "model": "Tessel",
        "trim": "LX",
        "mileage": 58000,
        "mileage_unit": "mi",
        "title": "clear",
        "distance": 12.5,
        "condition": 4,
        "note": "one owner",
        "source": "yard list",
        "more": {
          "fuel": "petrol"
        },
        "excluded": false
      },
      {
        "id": "c2",
        "price": "17250.50",
        "kind": "asked",
        "date": "2026-11-01",
        "model_year": 2020,
        "make": "Orlan",
        "model": "Tessel",
        "mileage": 70000,
        "mileage_unit": "km",
        "title": "rebuilt",
        "excluded": true
      }
    ],
    "subject": {
      "trim": "LX",
      "condition": 3,
      "brand": "rebuilt"
    },
    "brand_discount": {
      "low": 0.15,
      "likely": 0.28,
      "high": 0.45
    },
    "asked_to_sold": {
      "low": 0.9,
      "likely": 0.95,
      "high": 1
    },
    "guess": {
      "low": 14000.00,
      "likely": 16500.00,
      "high": 18500.00
    }
  },
  "buying": {
    "bid_steps": [
      {
        "from": "0.00",
        "step": "25.00"
      },
      {
        "from": "1000.00",
        "step": "50.00"
      }
    ],
    "fees": [
      {
        "name": "Buyer''s fee",
        "mode": "whole",
        "rows": [
          {
            "from": "0.00",
            "flat": "100.00",
            "percent": 0
          },
          {
            "from": "1000.00",
            "flat": "150.00",
            "percent": 0.02
          },
          {
            "from": "5000.00",
            "flat": "0.00",
            "percent": 0.08,
            "minimum": "400.00"
          }
        ]
      }
    ],
    "fixed": [
      {
        "name": "Gate",
        "amount": "75.00"
      }
    ],
    "payment_surcharge": 0.025,
    "tax": {
      "rate": 0.0625,
      "base": "hammer_and_fees"
    },
    "freight": {
      "low": 150.00,
      "likely": 180.00,
      "high": 240.00
    },
    "storage": {
      "per_day": 30.00,
      "free_days": 3,
      "days": {
        "low": 2,
        "likely": 3,
        "high": 6
      }
    }
  },
  "time": {
    "hours_per_week": 30,
    "inspection_queue_days": {
      "low": 7,
      "likely": 14,
      "high": 35
    },
    "days_to_sell": {
      "low": 7,
      "likely": 21,
      "high": 60
    },
    "holding_per_day": 6.00,
    "capital_rate": 0.1
  },
  "selling": {
    "percent": 0,
    "flat": 250.00
  },
  "labour": {
    "rates": {
      "body": 35.00,
      "electrical": 35.00,
      "mechanical": 35.00,
      "paint": 35.00,
      "structure": 35.00,
      "trim": 35.00
    }
  },
  "market": {
    "rivals": 4,
    "hammer_guess": {
      "low": 3500.00,
      "likely": 5200.00,
      "high": 7500.00
    }
  },
  "rules": {
    "min_profit": "1500.00",
    "min_margin": 0.12,
    "max_loss_chance": 0.15,
    "max_worst_tenth_loss": "2500.00",
    "min_per_hour": "40.00",
    "max_cash": "20000.00",
    "max_days": 150
  },
  "run": {
    "scenarios": 4096,
    "seed": 7,
    "winners_allowance": false
  }
}
','{
  "format": "walkline-answer/1",
  "currency": "USD",
  "decision": "bid",
  "walk_away": "4200.00",
  "binding_rule": "max_loss_chance",
  "reasons": [],
  "warnings": [],
  "ceilings": {},
  "resale": {
    "mean": 0,
    "p10": 0,
    "p50": 0,
    "p90": 0,
    "rows_used": 0,
    "adjusted": [],
    "warnings": []
  },
  "repair": {
    "mean": 0,
    "p10": 0,
    "p90": 0,
    "lines": []
  },
  "hidden": {
    "mean": 0,
    "p10": 0,
    "p90": 0,
    "risks": []
  },
  "days": {
    "mean": 0,
    "p10": 0,
    "p90": 0
  },
  "hours": {
    "mean": 0,
    "p10": 0,
    "p90": 0
  },
  "acquisition": {
    "bid": "0.00",
    "lines": [],
    "total": "0.00"
  },
  "profit": {
    "mean": 2100.25,
    "p05": 0,
    "p10": 0,
    "p50": 0,
    "p90": 0,
    "loss_chance": 0.14,
    "worst_tenth_mean": 0,
    "margin": 0,
    "per_hour": 41.5
  },
  "ladder": [],
  "waterfall": [],
  "drivers": [],
  "checklist": [],
  "own_labour": {
    "mean": 0,
    "p10": 0,
    "p90": 0
  }
}
','null',9,'e');
INSERT INTO predictions VALUES(3,4,'2026-11-26T09:00:00Z','{
  "format": "walkline-case/1",
  "currency": "USD",
  "valued_on": "2026-11-20",
  "lot": {
    "number": "14",
    "sale": "Harrow Flats yard",
    "sale_date": "2026-11-28",
    "model_year": 2019,
    "make": "Orlan",
    "model": "Tessel",
    "trim": "LX",
    "odometer": 61200,
    "odometer_unit": "mi",
    "odometer_status": "actual",
    "title": {
      "issued_in": "US-XX",
      "document": "salvage",
      "register_in": "US-XX"
    },
    "loss": [
      "collision"
    ],
    "condition": "starts",
    "keys": true,
    "airbags_deployed": [
      "front"
    ]
  },
  "damage": [
    {
      "area": "12",
      "extent": "functional",
      "depth": "bolted",
      "note": "bumper, \"hood\""
    },
    {
      "area": "undercarriage",
      "extent": "minor",
      "depth": "structure"
    }
  ],
  "findings": {
    "rust_below": "no",
    "wheel_out_of_place": "yes"
  },
  "repair": {
    "use_catalogue": false,
    "lines": [
      {
        "id": "r1",
        "job": "Replace bumper cover",
        "area": "12",
        "operation": "replace",
        "chance": 0.9,
        "hours": {
          "body": {
            "low": 1,
            "likely": 1.5,
            "high": 3
          }
        },
        "materials": {
          "low": 20.00,
          "likely": 30.00,
          "high": 60.00
        },
        "outside": 0.00,
        "parts": [
          {
            "name": "bumper cover",
            "critical": true,
            "options": [
              {
                "source": "used",
                "price": {
                  "low": 120.00,
                  "likely": 180.00,
                  "high": 260.00
                },
                "freight": 40.00,
                "lead_days": {
                  "low": 1,
                  "likely": 3,
                  "high": 10
                },
                "chance": 0.7,
                "extra_hours": 0,
                "core_back": 0.00
              }
            ],
            "fallback": {
              "price": 600.00,
              "lead_days": 21,
              "hours": 0
            }
          }
        ],
        "edited": false,
        "removed": false
      }
    ]
  },
  "hidden": {
    "use_catalogue": false,
    "risks": [
      {
        "id": "h1",
        "name": "Control arm mount torn",
        "chance": {
          "a": 2,
          "b": 6
        },
        "cost": {
          "low": 150.00,
          "likely": 300.00,
          "high": 900.00
        },
        "hours": {
          "structure": {
            "low": 1,
            "likely": 3,
            "high": 8
          }
        },
        "days": 2,
        "loading": 0.25,
        "removed": false
      }
    ],
    "shared_loading": 0
  },
  "resale": {
    "rows": [
      {
        "id": "c1",
        "price": "16500.00",
        "kind": "sold",
        "date": "2026-10-02",
        "model_year": 2019,
        "make": "Orlan",
        "model": "Tessel",
        "trim": "LX",
        "mileage": 58000,
        "mileage_unit": "mi",
        "title": "clear",
        "distance": 12.5,
        "condition": 4,
        "note": "one owner",
        "source": "yard list",
        "more": {
          "fuel": "petrol"
        },
        "excluded": false
      },
      {
        "id": "c2",
        "price": "17250.50",
        "kind": "asked",
        "date": "2026-11-01",
        "model_year": 2020,
        "make": "Orlan",
        "model": "Tessel",
        "mileage": 70000,
        "mileage_unit": "km",
        "title": "rebuilt",
        "excluded": true
      }
    ],
    "subject": {
      "trim": "LX",
      "condition": 3,
      "brand": "rebuilt"
    },
    "brand_discount": {
      "low": 0.15,
      "likely": 0.28,
      "high": 0.45
    },
    "asked_to_sold": {
      "low": 0.9,
      "likely": 0.95,
      "high": 1
    },
    "guess": {
      "low": 14000.00,
      "likely": 16500.00,
      "high": 18500.00
    }
  },
  "buying": {
    "bid_steps": [
      {
        "from": "0.00",
        "step": "25.00"
      },
      {
        "from": "1000.00",
        "step": "50.00"
      }
    ],
    "fees": [
      {
        "name": "Buyer''s fee",
        "mode": "whole",
        "rows": [
          {
            "from": "0.00",
            "flat": "100.00",
            "percent": 0
          },
          {
            "from": "1000.00",
            "flat": "150.00",
            "percent": 0.02
          },
          {
            "from": "5000.00",
            "flat": "0.00",
            "percent": 0.08,
            "minimum": "400.00"
          }
        ]
      }
    ],
    "fixed": [
      {
        "name": "Gate",
        "amount": "75.00"
      }
    ],
    "payment_surcharge": 0.025,
    "tax": {
      "rate": 0.0625,
      "base": "hammer_and_fees"
    },
    "freight": {
      "low": 150.00,
      "likely": 180.00,
      "high": 240.00
    },
    "storage": {
      "per_day": 30.00,
      "free_days": 3,
      "days": {
        "low": 2,
        "likely": 3,
        "high": 6
      }
    }
  },
  "time": {
    "hours_per_week": 30,
    "inspection_queue_days": {
      "low": 7,
      "likely": 14,
      "high": 35
    },
    "days_to_sell": {
      "low": 7,
      "likely": 21,
      "high": 60
    },
    "holding_per_day": 6.00,
    "capital_rate": 0.1
  },
  "selling": {
    "percent": 0,
    "flat": 250.00
  },
  "labour": {
    "rates": {
      "body": 35.00,
      "electrical": 35.00,
      "mechanical": 35.00,
      "paint": 35.00,
      "structure": 35.00,
      "trim": 35.00
    }
  },
  "market": {
    "rivals": 4,
    "hammer_guess": {
      "low": 3500.00,
      "likely": 5200.00,
      "high": 7500.00
    }
  },
  "rules": {
    "min_profit": "1500.00",
    "min_margin": 0.12,
    "max_loss_chance": 0.15,
    "max_worst_tenth_loss": "2500.00",
    "min_per_hour": "40.00",
    "max_cash": "20000.00",
    "max_days": 150
  },
  "run": {
    "scenarios": 4096,
    "seed": 7,
    "winners_allowance": false
  }
}
','{
  "format": "walkline-answer/1",
  "currency": "USD",
  "decision": "bid",
  "walk_away": null,
  "binding_rule": "max_loss_chance",
  "reasons": [],
  "warnings": [],
  "ceilings": {},
  "no_ceiling": [],
  "resale": {
    "mean": 0,
    "p10": 0,
    "p50": 0,
    "p90": 0,
    "rows_used": 0,
    "adjusted": [],
    "warnings": []
  },
  "repair": {
    "mean": 0,
    "p10": 0,
    "p90": 0,
    "lines": []
  },
  "hidden": {
    "mean": 0,
    "p10": 0,
    "p90": 0,
    "risks": []
  },
  "days": {
    "mean": 0,
    "p10": 0,
    "p90": 0
  },
  "hours": {
    "mean": 0,
    "p10": 0,
    "p90": 0
  },
  "acquisition": {
    "bid": "0.00",
    "lines": [],
    "total": "0.00"
  },
  "profit": {
    "mean": 2100.25,
    "p05": 0,
    "p10": 0,
    "p50": 0,
    "p90": 0,
    "loss_chance": 0.14,
    "worst_tenth_mean": 0,
    "margin": 0,
    "per_hour": 41.5
  },
  "ladder": [],
  "waterfall": [],
  "drivers": [],
  "checklist": [],
  "own_labour": {
    "mean": 0,
    "p10": 0,
    "p90": 0
  },
  "looks": {
    "basis": "",
    "perfect": null,
    "best": []
  },
  "total_loss": null
}
','{"hours":null,"parts":null,"materials":null,"outside":null,"hidden":null,"resale":null,"asked_to_sold":null,"brand_discount":null,"days_to_sell":null,"risks":null,"shared_loading":null,"half_life_days":0}',7,'3');
CREATE TABLE settings (
    name     TEXT PRIMARY KEY,
    value    TEXT NOT NULL CONSTRAINT value CHECK (json_valid(value)),
    saved_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO settings VALUES('shop','{"bay":"one","rate":40}','2026-11-26T09:00:00Z');
INSERT INTO settings VALUES('theme','"light"','2026-11-20T07:30:00Z');
CREATE TABLE steps (
    number  INTEGER PRIMARY KEY AUTOINCREMENT,
    subject TEXT    NOT NULL,
    label   TEXT    NOT NULL,
    typing  TEXT    NOT NULL,
    change  TEXT    NOT NULL CONSTRAINT change CHECK (json_valid(change)),
    undone  INTEGER NOT NULL DEFAULT 0 CONSTRAINT undone CHECK (undone IN (0, 1)),
    made_at TEXT    NOT NULL
) STRICT;
INSERT INTO steps VALUES(1,'board','mark lot 14 as looked at','','{"lots":[{"lot":1,"fields":[{"path":["status.state"],"before":"bid","after":"looked at"}]}]}',0,'2026-11-25T13:43:25.598004803Z');
INSERT INTO steps VALUES(2,'board','mark lot 14 as bid','','{"lots":[{"lot":1,"fields":[{"path":["status.state"],"before":"looked at","after":"bid"}]}]}',0,'2026-11-25T13:43:25.598609534Z');
INSERT INTO steps VALUES(3,'lot:1','Trim','','{"lots":[{"lot":1,"fields":[{"path":["lot","trim"],"before":"LX","after":"GT"}],"lists":{"rows":{"at":0,"out":[{"id":"c1","price":1650000,"kind":"sold","date":"2026-10-02","model_year":2019,"make":"Orlan","model":"Tessel","trim":"LX","mileage":58000,"mileage_unit":"mi","title":"clear","distance":12.5,"condition":4,"note":"one owner","source":"yard list","more":{"fuel":"petrol"},"excluded":false}],"in":[]}}}]}',0,'2026-11-20T07:30:00Z');
INSERT INTO steps VALUES(4,'build:2','close','','{"lots":[{"lot":2,"fields":[{"path":["build","dates","bought"],"before":"","after":"2026-01-01"},{"path":["build","dates","finished"],"before":"","after":"2026-02-01"},{"path":["build","dates","home"],"before":"","after":"2026-01-02"},{"path":["build","dates","inspected"],"before":"","after":"2026-02-10"},{"path":["build","dates","listed"],"before":"","after":"2026-02-11"},{"path":["build","dates","sold"],"before":"","after":"2026-02-23"},{"path":["build","dates","started"],"before":"","after":"2026-01-03"},{"path":["build","hammer"],"before":null,"after":420000},{"path":["build","imported","as"],"before":"","after":"7"},{"path":["build","imported","row"],"before":"","after":"r"},{"path":["build","note"],"before":"","after":"n"},{"path":["build","otherwise","as_is"],"before":null,"after":{"high":3,"likely":2,"low":1}},{"path":["build","otherwise","part_out"],"before":null,"after":{"high":3,"likely":2,"low":1}},{"path":["build","otherwise","part_out_hours"],"before":null,"after":{"high":3,"likely":2,"low":1}},{"path":["build","outcome"],"before":"","after":"sold"},{"path":["build","sale","brand"],"before":"","after":"rebuilt"},{"path":["build","sale","days"],"before":null,"after":12},{"path":["build","sale","first_asked"],"before":null,"after":1190000},{"path":["build","sale","price"],"before":null,"after":1150000}],"lists":{"build.charges":{"at":0,"out":[],"in":[{"name":"Gate","amount":7500}],"was_none":true,"is_none":true},"build.done":{"at":0,"out":[],"in":["r1"],"was_none":true,"is_none":true},"build.hours":{"at":0,"out":[],"in":[{"date":"2026-01-06","trade":"body","line":"r1","hours":2.5,"what":"fit"}],"was_none":true,"is_none":true},"build.receipts":{"at":0,"out":[],"in":[{"date":"2026-01-05","what":"Hood","amount":18000,"kind":"part","line":"r1","source":"used","trade":"body","donor":"1ABCD23E4FG567890","file":"hood.pdf","hash":"00000000000000000000000000000000000000000000000000000000000000ff"}],"was_none":true,"is_none":true},"build.risks":{"at":0,"out":[],"in":[{"risk":"h1","state":"found"}],"was_none":true,"is_none":true}}}]}',0,'2026-11-25T13:48:04.380852438Z');
INSERT INTO steps VALUES(5,'lot:2','add 2 photos','','{"lots":[{"lot":2,"lists":{"photos":{"at":0,"out":[],"in":[{"hash":"0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a","kind":"jpeg","name":"IMG 1.JPG","width":4032,"height":3024,"taken":"2026-01-02","area":"12","stage":"before","caption":"grille"},{"hash":"0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b","kind":"png","name":"b.png","width":20,"height":30,"taken":"","area":"","stage":"after","caption":""}],"was_none":true,"is_none":true}}}]}',0,'2026-11-25T14:12:30.822138917Z');
INSERT INTO steps VALUES(6,'board','new lot','','{"lots":[{"lot":3,"fields":[{"path":["status.removed"],"before":true,"after":false}]}]}',0,'2026-11-26T09:00:00Z');
INSERT INTO steps VALUES(7,'board','remove a lot','','{"lots":[{"lot":3,"fields":[{"path":["status.removed"],"before":false,"after":true}]}]}',0,'2026-11-26T09:00:00Z');
INSERT INTO steps VALUES(8,'bench:labour','labour','','{"settings":[{"path":["shop"],"after":{"bay":"one","rate":35}}]}',0,'2026-11-26T09:00:00Z');
INSERT INTO steps VALUES(9,'bench:labour','labour rate','','{"settings":[{"path":["shop","rate"],"before":35,"after":40}]}',0,'2026-11-26T09:00:00Z');
INSERT INTO steps VALUES(10,'record','accept a factor','','{"decision":{"what":"accepted","factor":"outside","words":"1 to 1.2","fields":[{"path":["factors","outside"],"after":{"factor":1.2,"from":9,"log_sd":0.1,"when":"2026-11-26"}}]}}',1,'2026-11-26T09:00:00Z');
INSERT INTO steps VALUES(11,'board','new lot','','{"lots":[{"lot":4,"fields":[{"path":["status.removed"],"before":true,"after":false}]}]}',0,'2026-11-26T09:00:00Z');
INSERT INTO steps VALUES(12,'sale','won','','{"lots":[{"lot":4,"fields":[{"path":["status.state"],"before":"to look at","after":"won"},{"path":["build","hammer"],"before":null,"after":420000}]}]}',0,'2026-11-26T09:00:00Z');
INSERT INTO steps VALUES(13,'lot:4','damage','note','{"lots":[{"lot":4,"lists":{"damage":{"at":0,"out":[{"area":"12","extent":"functional","depth":"bolted","note":"bumper, \"hood\""}],"in":[{"area":"12","extent":"functional","depth":"bolted","note":"bent"}]}}}]}',0,'2026-11-26T09:00:00Z');
INSERT INTO steps VALUES(14,'build:4','bill','','{"lots":[{"lot":4,"lists":{"build.receipts":{"at":0,"out":null,"in":[{"date":"2026-01-05","what":"Hood","amount":18000,"kind":"part","line":"r1","source":"used","trade":"body","donor":"1ABCD23E4FG567890","file":"hood.pdf","hash":"00000000000000000000000000000000000000000000000000000000000000ff"}],"was_none":true}}}]}',1,'2026-11-26T09:00:00Z');
DELETE FROM sqlite_sequence;
INSERT INTO sqlite_sequence VALUES('lots',4);
INSERT INTO sqlite_sequence VALUES('predictions',3);
INSERT INTO sqlite_sequence VALUES('factors',3);
INSERT INTO sqlite_sequence VALUES('steps',14);
CREATE TRIGGER factors_never_change BEFORE UPDATE ON factors
BEGIN
    SELECT RAISE(ABORT, 'the history of the factors never changes');
END;
CREATE TRIGGER factors_never_go BEFORE DELETE ON factors
BEGIN
    SELECT RAISE(ABORT, 'the history of the factors is never deleted');
END;
CREATE TRIGGER forecasts_never_change BEFORE UPDATE ON forecasts
BEGIN
    SELECT RAISE(ABORT, 'a frozen forecast never changes');
END;
CREATE TRIGGER forecasts_never_go BEFORE DELETE ON forecasts
BEGIN
    SELECT RAISE(ABORT, 'a frozen forecast is never deleted');
END;
CREATE UNIQUE INDEX imported_once ON lots (imported_as) WHERE imported_as <> '' AND removed_at IS NULL;
CREATE TRIGGER predictions_never_change BEFORE UPDATE ON predictions
BEGIN
    SELECT RAISE(ABORT, 'a frozen prediction never changes');
END;
CREATE TRIGGER predictions_never_go BEFORE DELETE ON predictions
BEGIN
    SELECT RAISE(ABORT, 'a frozen prediction is never deleted');
END;
CREATE INDEX predictions_of_lot ON predictions (lot, id);
CREATE INDEX steps_of_subject ON steps (subject, number);
CREATE TABLE pairing (
    only INTEGER PRIMARY KEY CONSTRAINT only CHECK (only = 1),
    mark TEXT    NOT NULL CONSTRAINT mark CHECK (length(mark) = 79)
) STRICT;
INSERT INTO pairing VALUES(1,'walkline-pair 1fa3b0c5d7e92846afcd01b2c3d4e5f6 9b8a7c6d5e4f30211203f4e5d6c7b8a9');
COMMIT;
